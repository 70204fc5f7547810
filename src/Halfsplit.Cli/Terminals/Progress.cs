namespace Halfsplit.Cli.Terminals;

/// <summary>Tells on the error stream that something takes longer than a second, and takes that back at its end.</summary>
public static class Progress
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    public static T While<T>(this Terminal terminal, Func<T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        if (!terminal.IsWatched)
        {
            return work();
        }

        var gate = new Lock();
        var seconds = 0;
        var ended = false;
        var shown = 0;
        using var timer = new Timer(
            _ =>
            {
                lock (gate)
                {
                    if (!ended)
                    {
                        var text = terminal.Say("progress.working", ++seconds);
                        terminal.Error.Write("\r" + text);
                        shown = text.Length;
                    }
                }
            },
            null, Patience, Patience);
        try
        {
            return work();
        }
        finally
        {
            lock (gate)
            {
                ended = true;
                if (shown > 0)
                {
                    terminal.Error.Write("\r" + new string(' ', shown) + "\r");
                    terminal.Error.Flush();
                }
            }
        }
    }
}
