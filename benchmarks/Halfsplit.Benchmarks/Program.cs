using BenchmarkDotNet.Running;
using Halfsplit.Benchmarks.Decisions;
using Halfsplit.Benchmarks.Dictionary;
using Halfsplit.Benchmarks.Networks;
using Halfsplit.Benchmarks.Processes;

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
    case ["process-table"]:
        ProcessTable.Print();
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(NetworkTable).Assembly).Run(args);
        break;
}
