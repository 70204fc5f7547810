using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Fuses;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Lookups;

/// <summary>A fuse's colour, cold ohms and melting times as ISO 8820-3 and the datasheets behind <c>data/fuses.csv</c> have them.</summary>
public static class FuseRatings
{
    private static readonly ImmutableArray<int> Percents = [135, 200, 350, 600];

    public static Outcome<Answer> Of(string fuse) => FuseSpec.Parse(fuse).Then(Answer);

    private static Answer Answer(FuseSpec fuse)
    {
        var lines = ImmutableArray.CreateBuilder<AnswerLine>();
        if (FuseTable.Colour(fuse.Type, fuse.Rating) is { } colour)
        {
            lines.Add(new("body-colour", new Message($"bench-body.{colour}")));
        }

        lines.Add(new("cold-resistance", fuse.ColdOhms, null));
        foreach (var percent in Percents)
        {
            var seconds = FuseTable.MeltSeconds(fuse.Type, percent);
            lines.Add(new(
                "melts", new Message("bench-fuse.melts", new Measure(seconds.Low, Unit.Second).Say(), new Measure(seconds.High, Unit.Second).Say()),
                new Measure(fuse.Rating * percent / 100, Unit.Amp).ToString()));
        }

        return new Answer(new Message("bench-fuse.rating-title", fuse.Say()), [], lines.ToImmutable(), [], [new Message("bench-fuse.rating-source")]);
    }
}
