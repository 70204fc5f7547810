using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace Halfsplit.Circuits.Data;

/// <summary>One row of an embedded table.</summary>
public sealed class DataRow(ImmutableDictionary<string, int> columns, ImmutableArray<string> fields)
{
    /// <summary>The field as it stands; empty if the table has none.</summary>
    public string Text(string column) => fields[columns[column]];

    public bool Has(string column) => Text(column).Length > 0;

    public double Number(string column) => double.Parse(Text(column), NumberStyles.Float, CultureInfo.InvariantCulture);
}

/// <summary>
/// Reads the comma-separated tables of <c>data/</c>, which are embedded in the assemblies that use them: first line the column
/// names, fields with commas in double quotes.
/// </summary>
public static class DataFile
{
    /// <exception cref="InvalidOperationException">No such table, or a row of another width: the build is broken.</exception>
    public static ImmutableArray<DataRow> Read(string name) => Read(typeof(DataFile).Assembly, name);

    /// <summary>The numbers of an embedded table by their names.</summary>
    /// <param name="key">The column of the names.</param>
    /// <param name="value">The column of the numbers.</param>
    /// <exception cref="InvalidOperationException">No such table, or a row of another width: the build is broken.</exception>
    public static FrozenDictionary<string, double> Numbers(Assembly assembly, string name, string key = "name", string value = "value") =>
        Read(assembly, name).ToFrozenDictionary(row => row.Text(key), row => row.Number(value), StringComparer.Ordinal);

    /// <summary>Reads a table embedded in the given assembly.</summary>
    /// <exception cref="InvalidOperationException">No such table, or a row of another width: the build is broken.</exception>
    public static ImmutableArray<DataRow> Read(Assembly assembly, string name)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        using var stream = assembly.GetManifestResourceStream("data/" + name)
            ?? throw new InvalidOperationException($"The table {name} is not embedded.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var lines = TableText.Read(reader.ReadToEnd(), ',');
        var header = lines.Length > 0 ? lines[0].Fields : [];
        var columns = header.Select((column, i) => (column, i)).ToImmutableDictionary(x => x.column, x => x.i);
        var rows = ImmutableArray.CreateBuilder<DataRow>();
        foreach (var line in lines.Skip(1))
        {
            if (line.Fields.Length != header.Length)
            {
                throw new InvalidOperationException($"Line {line.Line} of {name} has {line.Fields.Length} fields.");
            }

            rows.Add(new DataRow(columns, line.Fields));
        }

        return rows.ToImmutable();
    }
}
