using Xunit;

namespace Halfsplit.Evaluation.Tests;

/// <summary>What is wrong with a command line is said, never passed over.</summary>
public sealed class ArgumentsTests
{
    [Theory]
    [InlineData("", "Say what to do.")]
    [InlineData("tables", "There is no task tables.")]
    [InlineData("table --car 5", "table has no option --car.")]
    [InlineData("table --cars", "--cars needs a value after it.")]
    [InlineData("table --cars abc", "--cars abc: a whole number from 1 on is needed.")]
    [InlineData("closed-loop --threads 0", "--threads 0: a whole number from 1 on is needed.")]
    [InlineData("trace --car -1", "--car -1: a whole number from 0 on is needed.")]
    public void A_wrong_word_is_named(string line, string wrong)
    {
        var (read, why) = Arguments.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries));

        Assert.Null(read);
        Assert.Equal(wrong, why);
    }

    [Fact]
    public void Options_are_read()
    {
        var (read, wrong) = Arguments.Parse(["table", "--sheet", "horn,wipers", "--cars", "5"]);

        Assert.Null(wrong);
        Assert.Equal("table", read!.Task);
        Assert.Equal(["horn", "wipers"], read.List("--sheet", []));
        Assert.Equal(5, read.Number("--cars", 2000));
        Assert.Equal("usual", read.Text("--out", "usual"));
    }

    [Theory]
    [InlineData("table", "base,flat-weights,load-30")]
    [InlineData("closed-loop", "base")]
    [InlineData("differences --variant all", "base,flat-weights,load-30")]
    [InlineData("table --variant no-slips,base", "no-slips,base")]
    public void A_table_is_of_every_variant_and_other_tasks_of_the_usual_cars(string line, string first) =>
        Assert.Equal(first, string.Join(',', Arguments.Parse(line.Split(' ')).Read!.Variants.Take(3)));
}
