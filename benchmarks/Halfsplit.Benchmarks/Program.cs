using BenchmarkDotNet.Running;
using Halfsplit.Benchmarks.Networks;

switch (args)
{
    case ["network-table"]:
        NetworkTable.Print(Console.Out);
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(NetworkTable).Assembly).Run(args);
        break;
}
