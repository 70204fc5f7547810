using Halfsplit.Architecture.Tests.House;
using Halfsplit.Architecture.Tests.Rules;
using Xunit;

namespace Halfsplit.Architecture.Tests;

public sealed class PureEngineTests
{
    [Fact]
    public void The_engine_touches_no_file_clock_network_or_console()
    {
        var engine = Repository.ShippedProjects.Where(project => PureEngine.Projects.Contains(project.Name)).ToList();

        Assert.NotEmpty(engine);
        Broken.None(engine.SelectMany(project => PureEngine.BrokenBy(CompiledAssembly.Read(project.Assembly))));
    }

    [Theory]
    [InlineData("System.IO.File", "ReadAllText", 1)]
    [InlineData("System.IO.FileStream", ".ctor", 2)]
    [InlineData("System.IO.StreamReader", ".ctor", 1)]
    [InlineData("System.Net.Http.HttpClient", ".ctor", 0)]
    [InlineData("System.Console", "WriteLine", 1)]
    [InlineData("System.DateTime", "get_UtcNow", 0)]
    [InlineData("System.Diagnostics.Stopwatch", "GetTimestamp", 0)]
    [InlineData("System.Random", ".ctor", 0)]
    [InlineData("System.Random", "get_Shared", 0)]
    [InlineData("System.Guid", "NewGuid", 0)]
    [InlineData("System.Environment", "get_MachineName", 0)]
    [InlineData("System.Threading.Thread", "Sleep", 1)]
    [InlineData("System.Globalization.CultureInfo", "get_CurrentCulture", 0)]
    public void What_the_engine_may_not_use_is_found_in_compiled_code(string type, string member, int parameters)
    {
        var offender = CompiledAssembly.Read(typeof(Offender).Assembly.GetName().Name!);

        Assert.Contains($"{offender.Name} may not use {type}.{member}({parameters}).", PureEngine.BrokenBy(offender));
    }

    [Theory]
    [InlineData("System.IO.Stream", "Read", 3, false)]
    [InlineData("System.IO.StreamReader", ".ctor", 1, false)]
    [InlineData("System.IO.StringReader", ".ctor", 1, true)]
    [InlineData("System.Reflection.Assembly", "GetManifestResourceStream", 1, false)]
    [InlineData("System.Random", ".ctor", 1, false)]
    [InlineData("System.DateTime", ".ctor", 3, false)]
    [InlineData("System.Environment", "get_CurrentManagedThreadId", 0, false)]
    [InlineData("System.Globalization.CultureInfo", "get_InvariantCulture", 0, false)]
    public void What_the_engine_may_use_is_let_be(string type, string member, int parameters, bool takesTextFirst)
    {
        var assembly = new CompiledAssembly("Halfsplit.Circuits", [], [new MemberUse(type, member, parameters, takesTextFirst)]);

        Assert.Empty(PureEngine.BrokenBy(assembly));
    }

    [Fact]
    public void Two_uses_that_differ_only_in_the_text_they_take_are_told_apart()
    {
        var uses = CompiledAssembly.Read(typeof(Offender).Assembly.GetName().Name!).Uses;

        Assert.Contains(new MemberUse("System.IO.StreamReader", ".ctor", 1, TakesTextFirst: true), uses);
        Assert.Contains(new MemberUse("System.IO.StreamReader", ".ctor", 1, TakesTextFirst: false), uses);
    }
}
