using System.Text;

namespace Halfsplit.Circuits.Tests.Docs;

/// <summary>Files of <c>docs/</c>, embedded here.</summary>
internal static class DocsFile
{
    public static string Read(string name)
    {
        using var reader = new StreamReader(typeof(DocsFile).Assembly.GetManifestResourceStream(name)!, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
