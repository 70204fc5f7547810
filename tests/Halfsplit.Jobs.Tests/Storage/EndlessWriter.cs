using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Storage;

namespace Halfsplit.Jobs.Tests.Storage;

/// <summary>Appends readings as fast as it can and prints each one's id once it is recorded. Ends only when killed.</summary>
internal static class EndlessWriter
{
    public const string Argument = "--write-until-killed";

    public static int Run(string path)
    {
        if (JobFile.Open(path).Value is not { } file) return 1;
        using (file)
        {
            for (var count = 0; ; count++)
            {
                var id = EventIdSource.Shared.Next(file.Document.LastId);
                // Some lines are long, so that a kill has the time to fall into the middle of a write.
                var typed = count % 3 == 0 ? new string('9', 2_000_000) : "12.4 V";
                var problem = file.Append(new ReadingTaken(
                    id,
                    TimeProvider.System.GetUtcNow(),
                    new Observation("c", "reading", new ArrangementUsed("key off"), "volts", typed, new ReadingParse.Number(12.4, Quantity.Volts, 0.1))));
                if (problem is not null) return 2;
                Console.Out.WriteLine(id);
                Console.Out.Flush();
            }
        }
    }
}
