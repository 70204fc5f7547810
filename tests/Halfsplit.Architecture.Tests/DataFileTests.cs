using Halfsplit.Architecture.Tests.House;
using Xunit;

namespace Halfsplit.Architecture.Tests;

/// <summary>Every published or assumed value says where it is from.</summary>
public sealed class DataFileTests
{
    /// <summary>Lists of words and names hold no values.</summary>
    private static readonly string[] WithoutValues = ["data/shelf.csv", "data/shelf-elsewhere.csv", "data/shelf-systems.csv", "data/shelf-words.csv"];

    public static TheoryData<string> Tables => [.. Repository.Files("data", "*.csv").Select(f => f.Path).Except(WithoutValues)];

    [Theory]
    [MemberData(nameof(Tables))]
    public void Every_row_of_a_table_has_a_source(string path)
    {
        var lines = Repository.Files("data", "*.csv").Single(f => f.Path == path).Text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var header = Fields(lines[0]);
        var sources = header.Select((name, i) => (Name: name.Trim(), At: i)).Where(c => c.Name.EndsWith("source", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(sources);
        Assert.All(lines.Skip(1), line =>
        {
            var fields = Fields(line);
            Assert.Equal(header.Count, fields.Count);
            Assert.True(sources.Any(s => fields[s.At].Trim().Length >= "from memory".Length - 1), $"{path}: no source: {line}");
        });
    }

    [Fact]
    public void No_source_is_the_name_of_a_site() => Assert.All(
        Repository.Files("data", "*.csv"),
        file => Assert.DoesNotMatch(@"\b(www\.|https?:|[a-z0-9-]+\.(com|de|info|org|net)\b)", file.Text));

    private static List<string> Fields(string line)
    {
        var fields = new List<string> { "" };
        var quoted = false;
        foreach (var letter in line)
        {
            if (letter == '"')
            {
                quoted = !quoted;
            }
            else if (letter == ',' && !quoted)
            {
                fields.Add("");
            }
            else
            {
                fields[^1] += letter;
            }
        }

        return fields;
    }
}
