using System.Globalization;
using BenchmarkDotNet.Running;
using Halfsplit.Benchmarks.Decisions;
using Halfsplit.Benchmarks.Dictionary;
using Halfsplit.Benchmarks.Networks;
using Halfsplit.Benchmarks.Processes;
using Halfsplit.Benchmarks.Sequencing;

switch (args)
{
    case ["network-table"]:
        NetworkTable.Print(Console.Out);
        break;
    case ["decision-table"]:
        DecisionTable.Print();
        break;
    case ["dictionary-table"]:
        DictionaryTable.Print();
        break;
    case ["sequencing-table", .. var rest] when rest.Length < 2:
        SequencingTable.Print(Console.Out, rest is [var count] ? int.Parse(count, CultureInfo.InvariantCulture) : 1000);
        break;
    case ["process-table"]:
        ProcessTable.Print();
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(NetworkTable).Assembly).Run(args);
        break;
}
