using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Motors;

/// <summary>Holds a motor's running mean against what it is rated for.</summary>
internal static class MotorRating
{
    /// <summary>What to say of a mean that is far from the rated amps; empty where it is near, or nothing is rated.</summary>
    public static ImmutableArray<Message> Judge(double meanAmps, double? ratedAmps)
    {
        if (ratedAmps is not { } rated)
        {
            return [];
        }

        var off = BenchDefaults.Table["motor.rated-off"];
        var code = meanAmps > rated * off ? "bench-motor.above-rated" : meanAmps < rated / off ? "bench-motor.below-rated" : null;
        return code is null ? [] : [new Message(code, new Measure(meanAmps, Unit.Amp).Say(), new Measure(rated, Unit.Amp).Say())];
    }
}
