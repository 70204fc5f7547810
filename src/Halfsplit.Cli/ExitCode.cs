namespace Halfsplit.Cli;

/// <summary>What the program's end tells a script (<c>docs/terminal.md</c>). Part of the contract; never changed.</summary>
public static class ExitCode
{
    public const int Good = 0;

    /// <summary>The sheet or the job has errors, or can't be read or written.</summary>
    public const int Broken = 1;

    /// <summary>An unknown verb, option, part, terminal, condition or check.</summary>
    public const int Usage = 2;

    /// <summary>A doubtful reading: nothing is recorded until it is confirmed.</summary>
    public const int Question = 3;

    /// <summary>The text is no answer to the check: nothing is recorded.</summary>
    public const int Refused = 4;

    /// <summary>It does not fit where the job stands: it is done, or there is nothing to take back.</summary>
    public const int Misplaced = 5;

    /// <summary>A mistake of the program itself.</summary>
    public const int Internal = 70;
}
