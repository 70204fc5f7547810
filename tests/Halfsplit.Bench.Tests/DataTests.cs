using Xunit;

namespace Halfsplit.Bench.Tests;

public sealed class DataTests
{
    [Fact]
    public void Every_rule_has_a_spread_around_its_value_and_says_where_it_is_from()
    {
        Assert.NotEmpty(BenchDefaults.Table.All);
        foreach (var row in BenchDefaults.Table.All)
        {
            Assert.True(row.Range.Contains(row.Value), row.Name);
            Assert.NotEqual("", row.Unit);
            Assert.True(row.Source.Length > 10, row.Name);
        }
    }
}
