using Halfsplit.Circuits.Messages;

namespace Halfsplit.Server;

/// <summary>The texts of this project, in the language of the system.</summary>
internal static class ServerTexts
{
    private static readonly TextCatalog Catalog = new(
        SystemLanguage.Of(Environment.GetEnvironmentVariable),
        new TextSource("Halfsplit.Server.Texts", typeof(ServerTexts).Assembly));

    public static string Say(string code, params object[] arguments) => Catalog.Say(new Message(code, arguments));
}
