using System.Xml.Linq;

namespace Halfsplit.Architecture.Tests.House;

/// <summary>The files of this repository, as they lie on disk; build output is left out.</summary>
internal static class Repository
{
    private static readonly HashSet<string> BuildOutput = new(StringComparer.Ordinal)
    {
        "bin", "obj", "artifacts", "TestResults", "BenchmarkDotNet.Artifacts", "node_modules", ".git", ".vs", ".idea",
    };

    /// <summary>The folder of <c>Halfsplit.slnx</c>.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The projects under <c>src</c>.</summary>
    public static IReadOnlyList<ProjectFile> ShippedProjects { get; } = Projects("src");

    /// <summary>Every project of the repository.</summary>
    public static IReadOnlyList<ProjectFile> AllProjects { get; } = Projects(".");

    /// <summary>The projects that the solution lists, as paths from the root with forward slashes.</summary>
    public static IReadOnlyList<string> SolutionProjects { get; } =
    [
        .. XDocument.Load(Path.Combine(Root, "Halfsplit.slnx")).Descendants("Project")
            .Select(project => (string?)project.Attribute("Path") ?? "")
            .Select(path => path.Replace('\\', '/')),
    ];

    /// <summary>The files below <paramref name="folder"/> that match <paramref name="pattern"/>, in a fixed order.</summary>
    public static IReadOnlyList<SourceFile> Files(string folder, string pattern)
    {
        var found = new List<SourceFile>();
        Collect(new DirectoryInfo(Path.Combine(Root, folder)), pattern, found);
        found.Sort((left, right) => string.CompareOrdinal(left.Path, right.Path));
        return found;
    }

    private static void Collect(DirectoryInfo folder, string pattern, List<SourceFile> found)
    {
        if (!folder.Exists)
            return;

        foreach (var file in folder.EnumerateFiles(pattern))
            found.Add(new SourceFile(Path.GetRelativePath(Root, file.FullName).Replace('\\', '/'), File.ReadAllText(file.FullName)));

        foreach (var child in folder.EnumerateDirectories().Where(child => !BuildOutput.Contains(child.Name)))
            Collect(child, pattern, found);
    }

    private static IReadOnlyList<ProjectFile> Projects(string folder) =>
        [.. Files(folder, "*.csproj").Select(file => ProjectFile.Parse(file.Path, file.Text))];

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Halfsplit.slnx")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"No Halfsplit.slnx above {AppContext.BaseDirectory}");
    }
}
