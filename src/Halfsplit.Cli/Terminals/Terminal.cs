using System.Text;
using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Sessions;
using Spectre.Console;

namespace Halfsplit.Cli.Terminals;

/// <summary>What the program talks to. Tests put text writers in the place of the console.</summary>
public sealed class Terminal
{
    /// <summary>Columns where the output is no terminal.</summary>
    public const int PipeWidth = 80;

    public Terminal(
        TextReader input, TextWriter output, TextWriter error, bool colours = false, int width = PipeWidth,
        EventStamps? stamps = null)
    {
        In = input;
        Out = output;
        Error = error;
        Stamps = stamps ?? EventStamps.OfThisMachine;
        Console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = colours ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = colours ? ColorSystemSupport.EightBit : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(output),
        });
        Console.Profile.Width = width;
        Console.Profile.Capabilities.Unicode = true;
    }

    public TextReader In { get; }

    public TextWriter Out { get; }

    public TextWriter Error { get; }

    /// <summary>Draws on <see cref="Out"/>.</summary>
    public IAnsiConsole Console { get; }

    public EventStamps Stamps { get; }

    /// <summary>The person's language, where the command line names none.</summary>
    public Language Language { get; init; } = Language.English;

    /// <summary>The environment's variables by name; tests put their own in its place.</summary>
    public Func<string, string?> Environment { get; init; } = System.Environment.GetEnvironmentVariable;

    public TextCatalog Texts => CliTexts.Catalog;

    public int Width => Console.Profile.Width;

    /// <summary>Somebody sits at the keyboard: prompts are worth printing.</summary>
    public bool IsTyped { get; init; }

    /// <summary>Somebody watches the error stream: progress is worth showing.</summary>
    public bool IsWatched { get; init; }

    /// <summary>The console of this process. Colours only on a terminal, and not where NO_COLOR is set.</summary>
    public static Terminal OfThisProcess()
    {
        var plain = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        var redirected = System.Console.IsOutputRedirected;
        if (!redirected || System.Console.IsInputRedirected)
        {
            System.Console.OutputEncoding = plain;
        }

        // A pipe takes UTF-8 whatever the machine's code page is, and is not flushed at every line.
        var output = redirected
            ? new StreamWriter(System.Console.OpenStandardOutput(), plain) { AutoFlush = false }
            : System.Console.Out;
        var noColour = !string.IsNullOrEmpty(System.Environment.GetEnvironmentVariable("NO_COLOR"))
            || System.Environment.GetEnvironmentVariable("TERM") == "dumb";
        return new Terminal(
            System.Console.In, output, System.Console.Error, !redirected && !noColour,
            redirected ? PipeWidth : Math.Clamp(SafeWidth(), 40, 120))
        {
            Language = SystemLanguage.Of(System.Environment.GetEnvironmentVariable),
            IsTyped = !System.Console.IsInputRedirected && !redirected,
            IsWatched = !System.Console.IsErrorRedirected && System.Environment.GetEnvironmentVariable("TERM") != "dumb",
        };
    }

    public string Say(Message message) => Texts.Say(message);

    public string Say(string code, params object[] arguments) => Texts.Say(new Message(code, arguments));

    private static int SafeWidth()
    {
        try
        {
            return System.Console.WindowWidth > 0 ? System.Console.WindowWidth : PipeWidth;
        }
        catch (IOException)
        {
            return PipeWidth;
        }
    }
}
