using Halfsplit.Cli;
using Halfsplit.Cli.Terminals;

return HalfsplitProgram.Run(args, Terminal.OfThisProcess());
