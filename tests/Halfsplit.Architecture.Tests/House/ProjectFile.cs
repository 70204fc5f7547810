using System.Xml.Linq;

namespace Halfsplit.Architecture.Tests.House;

/// <summary>What a project file says of its place in the house.</summary>
/// <param name="Path">From the root, with forward slashes.</param>
/// <param name="Assembly">The name of the assembly it builds.</param>
/// <param name="References">The names of the projects it refers to.</param>
/// <param name="Packages">The names of the packages it refers to.</param>
internal sealed record ProjectFile(
    string Path, string Assembly, IReadOnlyList<string> References, IReadOnlyList<string> Packages)
{
    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    public static ProjectFile Parse(string path, string xml)
    {
        var document = XDocument.Parse(xml);
        var assembly = document.Descendants("AssemblyName").FirstOrDefault()?.Value;
        return new ProjectFile(
            path,
            assembly ?? System.IO.Path.GetFileNameWithoutExtension(path),
            [.. Includes("ProjectReference").Select(include => System.IO.Path.GetFileNameWithoutExtension(include.Replace('\\', '/')))],
            [.. Includes("PackageReference")]);

        IEnumerable<string> Includes(string item) =>
            document.Descendants(item).Select(element => (string?)element.Attribute("Include") ?? "").Where(include => include.Length > 0);
    }
}
