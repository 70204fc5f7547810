namespace Halfsplit.Cli;

/// <summary>
/// A reading below zero looks like an option to the command line's parser. It goes past the parser with the minus sign of
/// typography, and gets its own back behind it.
/// </summary>
public static class ArgumentGuard
{
    private const char Minus = '\u2212';

    public static string[] Do(IEnumerable<string> arguments) => [.. arguments.Select(a =>
        a.Length > 1 && a[0] == '-' && (char.IsAsciiDigit(a[1]) || a[1] is '.' or ',') ? Minus + a[1..] : a)];

    public static string Undo(string argument)
    {
        ArgumentNullException.ThrowIfNull(argument);
        return argument.Length > 1 && argument[0] == Minus ? "-" + argument[1..] : argument;
    }
}
