using Halfsplit.App.Desk;

namespace Halfsplit.App.Link;

/// <summary>The way to the engine's desk.</summary>
public interface IEngine
{
    /// <summary>Asks the desk that does the job. A reply with saved events comes only when they are kept for good.</summary>
    Task<DeskReply> AskAsync(DeskRequest request);

    /// <summary>How many desks think beside it; 0 on a small device.</summary>
    Task<int> ThinkersAsync();

    /// <summary>Asks a desk that thinks. It keeps nothing.</summary>
    /// <param name="thinker">Which one, counted from 0.</param>
    Task<DeskReply> ThinkAsync(int thinker, DeskRequest request);

    /// <summary>Lets go of the desks that think and of what they are doing.</summary>
    Task StopThinkingAsync();

    /// <summary>Lets go of all desks; a job that was open has to be opened anew from what is kept.</summary>
    Task StopAsync();
}
