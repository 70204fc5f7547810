using Halfsplit.Architecture.Tests.House;
using Halfsplit.Architecture.Tests.Rules;
using Xunit;

namespace Halfsplit.Architecture.Tests;

public sealed class ArrowTests
{
    [Fact]
    public void Project_files_keep_the_arrows()
    {
        Assert.NotEmpty(Repository.ShippedProjects);
        Broken.None(Arrows.BrokenBy(Repository.ShippedProjects));
    }

    [Fact]
    public void Compiled_assemblies_keep_the_arrows() =>
        Broken.None(Arrows.BrokenBy(Repository.ShippedProjects, project => CompiledAssembly.Read(project.Assembly)));

    [Fact]
    public void Every_project_stands_in_the_solution() =>
        Assert.Equal(Repository.AllProjects.Select(project => project.Path).Order(StringComparer.Ordinal),
            Repository.SolutionProjects.Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("Halfsplit.Circuits", "Halfsplit.Simulation")]
    [InlineData("Halfsplit.Simulation", "Halfsplit.Diagnosis")]
    [InlineData("Halfsplit.Diagnosis", "Halfsplit.Jobs")]
    [InlineData("Halfsplit.Diagnosis", "Halfsplit.Drawing")]
    [InlineData("Halfsplit.Jobs", "Halfsplit.Cli")]
    [InlineData("Halfsplit.Jobs", "Halfsplit.Bench")]
    [InlineData("Halfsplit.Bench", "Halfsplit.Jobs")]
    [InlineData("Halfsplit.Drawing", "Halfsplit.Jobs")]
    [InlineData("Halfsplit.Cli", "Halfsplit.Server")]
    [InlineData("Halfsplit.App", "Halfsplit.Cli")]
    public void A_reference_against_the_arrows_is_found(string from, string to)
    {
        var project = Project(from, $"""<ProjectReference Include="../{to}/{to}.csproj" />""");

        Assert.Equal([$"{from} may not refer to {to}."], Arrows.BrokenBy([project]));
    }

    [Theory]
    [InlineData("Halfsplit.Simulation", "Halfsplit.Circuits")]
    [InlineData("Halfsplit.Drawing", "Halfsplit.Diagnosis")]
    [InlineData("Halfsplit.Jobs", "Halfsplit.Drawing")]
    [InlineData("Halfsplit.Cli", "Halfsplit.Bench")]
    [InlineData("Halfsplit.App", "Halfsplit.Bench")]
    [InlineData("Halfsplit.Bench", "Halfsplit.Diagnosis")]
    [InlineData("Halfsplit.App", "Halfsplit.Jobs")]
    [InlineData("Halfsplit.Server", "Halfsplit.App")]
    public void A_reference_along_the_arrows_is_let_be(string from, string to)
    {
        var project = Project(from, $"""<ProjectReference Include="../{to}/{to}.csproj" />""");

        Assert.Empty(Arrows.BrokenBy([project]));
    }

    [Theory]
    [InlineData("Halfsplit.Simulation", "YamlDotNet")]
    [InlineData("Halfsplit.Jobs", "Spectre.Console")]
    [InlineData("Halfsplit.Server", "Microsoft.AspNetCore.Components.Web")]
    public void A_package_in_the_wrong_project_is_found(string project, string package)
    {
        var found = Arrows.BrokenBy([Project(project, $"""<PackageReference Include="{package}" />""")]);

        Assert.StartsWith($"{project} may not use {package}", Assert.Single(found), StringComparison.Ordinal);
    }

    [Fact]
    public void A_project_without_a_place_is_found() =>
        Assert.Contains("Halfsplit.Attic", Assert.Single(Arrows.BrokenBy([Project("Halfsplit.Attic", "")])), StringComparison.Ordinal);

    [Fact]
    public void A_compiled_reference_against_the_arrows_is_found()
    {
        ProjectFile[] projects = [Project("Halfsplit.Circuits", ""), Project("Halfsplit.Jobs", "")];
        var found = Arrows.BrokenBy(projects, project => project.Name is "Halfsplit.Circuits"
            ? new CompiledAssembly("Halfsplit.Circuits", ["System.Runtime", "Halfsplit.Jobs", "Spectre.Console"], [])
            : new CompiledAssembly("Halfsplit.Jobs", ["System.Runtime", "Halfsplit.Circuits"], []));

        Assert.Equal(
            ["Halfsplit.Circuits may not use Halfsplit.Jobs.", "Halfsplit.Circuits may not use Spectre.Console: only Halfsplit.Cli may."],
            found);
    }

    private static ProjectFile Project(string name, string items) =>
        ProjectFile.Parse($"src/{name}/{name}.csproj", $"<Project><ItemGroup>{items}</ItemGroup></Project>");
}
