using Halfsplit.App.Desk;

namespace Halfsplit.App.Link;

/// <summary>The way to the engine's desk.</summary>
public interface IEngine
{
    /// <summary>Asks the desk that does the job. A reply with saved events comes only when they are kept for good.</summary>
    Task<DeskReply> AskAsync(DeskRequest request);

    /// <summary>Asks the desk that thinks ahead; null where there is none.</summary>
    Task<DeskReply?> ThinkAsync(DeskRequest request);

    /// <summary>Lets go of the desk that thinks ahead and of what it is doing.</summary>
    Task StopThinkingAsync();
}
