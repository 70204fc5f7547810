using System.Collections.Immutable;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Bench;

/// <summary>The tables of <c>data/</c> that lie in this assembly.</summary>
internal static class BenchData
{
    public static ImmutableArray<DataRow> Read(string name) => DataFile.Read(typeof(BenchData).Assembly, name);
}
