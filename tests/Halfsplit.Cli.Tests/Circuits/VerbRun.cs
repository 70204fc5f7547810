using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Tests.Circuits;

/// <summary>One command line, run in this process as a pipe would see it.</summary>
internal sealed record VerbRun(int Code, string Output, string Errors)
{
    public static VerbRun Of(params string[] arguments) => With("", arguments);

    public static VerbRun With(string input, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        using var typed = new StringReader(input);
        var code = HalfsplitProgram.Run(arguments, new Terminal(typed, output, errors));
        return new VerbRun(code, output.ToString(), errors.ToString());
    }
}
