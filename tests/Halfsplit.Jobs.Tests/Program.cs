using Halfsplit.Jobs.Tests;
using Halfsplit.Jobs.Tests.Storage;
using Xunit.MicrosoftTestingPlatform;
using Xunit.Runner.InProc.SystemConsole;

// The test program is its own second process: with these arguments it appends to a job file until it is killed.
if (args is [EndlessWriter.Argument, var path]) return EndlessWriter.Run(path);

return args.Any(argument => argument is "--server" or "--internal-msbuild-node")
    ? await TestPlatformTestFramework.RunAsync(args, SelfRegisteredExtensions.AddSelfRegisteredExtensions)
    : await ConsoleRunner.Run(args);
