using System.Globalization;
using System.Runtime.CompilerServices;

namespace Halfsplit.Testing;

/// <summary>
/// Puts the whole test process under the culture named in <see cref="Variable"/>, such as <c>tr-TR</c> or <c>de-DE</c>.
/// Linked into every test project, so that the same tests show that no text, number or order depends on the machine's language.
/// </summary>
internal static class CultureOfTheRun
{
    /// <summary>The environment variable with the culture's name; unset or empty leaves the machine's culture alone.</summary>
    public const string Variable = "HALFSPLIT_TEST_CULTURE";

    [ModuleInitializer]
    internal static void Set()
    {
        var name = Environment.GetEnvironmentVariable(Variable);
        if (string.IsNullOrEmpty(name))
            return;

        // Predefined only: without culture data this throws, where a made-up culture would pass every test for nothing.
        var culture = CultureInfo.GetCultureInfo(name, predefinedOnly: true);
        CultureInfo.DefaultThreadCurrentCulture = culture;
        CultureInfo.DefaultThreadCurrentUICulture = culture;
        CultureInfo.CurrentCulture = culture;
        CultureInfo.CurrentUICulture = culture;
    }
}
