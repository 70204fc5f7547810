using Halfsplit.Architecture.Tests.House;

namespace Halfsplit.Architecture.Tests.Rules;

/// <summary>
/// Circuits &lt;- Simulation &lt;- Diagnosis &lt;- Jobs &lt;- (Cli, App, Server); Drawing stands on the engine and Jobs
/// calls it; Bench stands on Circuits, Simulation and Diagnosis.
/// </summary>
internal static class Arrows
{
    private static readonly Dictionary<string, string[]> Below = new(StringComparer.Ordinal)
    {
        ["Halfsplit.Circuits"] = [],
        ["Halfsplit.Simulation"] = ["Halfsplit.Circuits"],
        ["Halfsplit.Diagnosis"] = ["Halfsplit.Circuits", "Halfsplit.Simulation"],
        ["Halfsplit.Bench"] = ["Halfsplit.Circuits", "Halfsplit.Simulation", "Halfsplit.Diagnosis"],
        ["Halfsplit.Drawing"] = ["Halfsplit.Circuits", "Halfsplit.Simulation", "Halfsplit.Diagnosis"],
        ["Halfsplit.Jobs"] = ["Halfsplit.Circuits", "Halfsplit.Simulation", "Halfsplit.Diagnosis", "Halfsplit.Drawing"],
        ["Halfsplit.Cli"] = HostsStandOn,
        ["Halfsplit.App"] = HostsStandOn,
        // The server hands out the app's files.
        ["Halfsplit.Server"] = [.. HostsStandOn, "Halfsplit.App"],
    };

    // A package that only one project may use, by the start of its name.
    private static readonly (string Package, string Owner)[] Owners =
    [
        ("YamlDotNet", "Halfsplit.Circuits"),
        ("Spectre.", "Halfsplit.Cli"),
        ("Microsoft.AspNetCore.Components", "Halfsplit.App"),
    ];

    private static string[] HostsStandOn =>
    [
        "Halfsplit.Circuits", "Halfsplit.Simulation", "Halfsplit.Diagnosis", "Halfsplit.Bench", "Halfsplit.Drawing", "Halfsplit.Jobs",
    ];

    /// <summary>What the project files say against the arrows, a sentence each.</summary>
    public static IEnumerable<string> BrokenBy(IEnumerable<ProjectFile> projects)
    {
        foreach (var project in projects)
        {
            if (!Below.TryGetValue(project.Name, out var below))
            {
                yield return $"{project.Name} has no place in the house: give it one in {nameof(Arrows)}.";
                continue;
            }

            foreach (var reference in project.References.Except(below))
                yield return $"{project.Name} may not refer to {reference}.";

            foreach (var broken in project.Packages.SelectMany(package => BrokenOwnership(project.Name, package)))
                yield return broken;
        }
    }

    /// <summary>
    /// What the compiled assemblies say: a reference can also come in through another project, without a line in the project file.
    /// </summary>
    public static IEnumerable<string> BrokenBy(IReadOnlyList<ProjectFile> projects, Func<ProjectFile, CompiledAssembly> read)
    {
        var names = projects.ToDictionary(project => project.Assembly, project => project.Name, StringComparer.Ordinal);
        foreach (var project in projects.Where(project => Below.ContainsKey(project.Name)))
        {
            foreach (var reference in read(project).References)
            {
                if (names.TryGetValue(reference, out var name) && !Below[project.Name].Contains(name))
                    yield return $"{project.Name} may not use {name}.";

                foreach (var broken in BrokenOwnership(project.Name, reference))
                    yield return broken;
            }
        }
    }

    private static IEnumerable<string> BrokenOwnership(string project, string package) =>
        Owners
            .Where(rule => package.StartsWith(rule.Package, StringComparison.Ordinal) && project != rule.Owner)
            .Select(rule => $"{project} may not use {package}: only {rule.Owner} may.");
}
