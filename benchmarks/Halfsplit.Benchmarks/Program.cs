using System.Globalization;
using BenchmarkDotNet.Running;
using Halfsplit.Benchmarks.Decisions;
using Halfsplit.Benchmarks.Dictionary;
using Halfsplit.Benchmarks.Motors;
using Halfsplit.Benchmarks.Networks;
using Halfsplit.Benchmarks.Processes;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Benchmarks.Sequencing;
using Halfsplit.Benchmarks.Shelf;

switch (args)
{
    case ["network-table"]:
        NetworkTable.Print(Console.Out);
        break;
    case ["decision-table", .. var chosen]:
        DecisionTable.Print(chosen);
        break;
    case ["decision-size-table"]:
        DecisionSizeTable.Print();
        break;
    case ["dictionary-table"]:
        DictionaryTable.Print();
        break;
    case ["sequencing-table", .. var rest] when rest.Length < 3:
        // How many problems, and the seed of the first.
        var numbers = rest.Select(r => int.Parse(r, CultureInfo.InvariantCulture)).ToArray();
        SequencingTable.PrintRandom(Console.Out, numbers is [var count, ..] ? count : 1000, numbers is [_, var seed] ? seed : 0);
        break;
    case ["cuts-table", .. var sheets]:
        SequencingTable.Print(Console.Out, [.. (sheets is [] ? [.. ShippedSheets.Names] : sheets).SelectMany(SequencingCuts.Of)]);
        break;
    case ["shelf-table"]:
        ShelfTable.Print();
        break;
    case ["motor-table"]:
        MotorTable.Print(Console.Out);
        break;
    case ["process-table"]:
        ProcessTable.Print();
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(NetworkTable).Assembly).Run(args);
        break;
}
