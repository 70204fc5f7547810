using Xunit;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>A wrong pin, a mistyped digit, mV for V and a lead without contact must not stay believed.</summary>
[Trait("Pace", "slow")]
public sealed class SlipRecoveryTests(ITestOutputHelper output)
{
    private static readonly (string Sheet, string Complaint)[] Complaints =
    [
        ("pump-feed", "pump does not run"), ("cooling-fan", "fan never runs"), ("headlamps", "left headlamp dark"),
        ("horn", "horns are silent"), ("wipers", "wipers do not wipe slowly"), ("stop-lamps", "left stop lamp dark"),
    ];

    [Fact]
    public void The_odds_recover_within_two_further_checks_in_most_cars_and_the_job_ends_as_without_the_slip()
    {
        var all = new List<Recovery>();
        var clean = new List<Played>();
        foreach (var (sheet, complaint) in Complaints)
        {
            var begun = SlipRecovery.Begin(sheet, complaint);
            var number = 0;
            foreach (var fault in SlipRecovery.Draw(begun, 5, 2026))
            {
                clean.Add(Game.PlayOn(begun.Anew(), new SimulatedCar(begun.Circuit, begun.Complaint.Load, fault)));
                foreach (var kind in Enum.GetValues<SlipKind>())
                {
                    if (SlipRecovery.Play(sheet, begun, fault, kind, ++number) is { } played)
                    {
                        all.Add(played);
                    }
                }
            }
        }

        foreach (var kind in Enum.GetValues<SlipKind>())
        {
            var some = all.Where(r => r.Kind == kind).ToList();
            output.WriteLine($"{kind}: {some.Count(r => r.IsRecovered)} of {some.Count} recovered, {some.Count(r => r.AskedAgain is not null)} asked again");
        }

        foreach (var lost in all.Where(r => !r.IsRecovered))
        {
            output.WriteLine(lost.ToString());
        }

        var share = all.Count(r => r.IsRecovered) / (double)all.Count;
        var ends = all.ConvertAll(r => r.End);
        output.WriteLine($"{share:0.000} of {all.Count}; {Told(ends)}; without a slip {Told(clean)}");
        Assert.True(all.Count >= 90, $"only {all.Count} cars");
        Assert.True(share >= 0.9, $"recovered in {share:0.000} of {all.Count}");
        Assert.All(ends, e => Assert.True(e.IsProven));
        Assert.True(RightAtOnce(ends) >= RightAtOnce(clean) - 0.05, $"{Told(ends)}; without a slip {Told(clean)}");
    }

    private static double RightAtOnce(List<Played> ends) => ends.Count(e => e.IsRightAtOnce) / (double)ends.Count;

    private static string Told(List<Played> ends) =>
        $"{ends.Count(e => e.IsProven)} of {ends.Count} proven, {ends.Count(e => e.IsRightAtOnce)} after one repair, {ends.Sum(e => e.WrongRepairs)} wrong repairs";

    [Fact]
    public void Of_a_car_without_slips_few_readings_are_asked_for_again()
    {
        var again = new List<int>();
        foreach (var (sheet, complaint) in Complaints)
        {
            var begun = SlipRecovery.Begin(sheet, complaint);
            foreach (var fault in SlipRecovery.Draw(begun, 3, 77))
            {
                var played = Game.Play(begun.Circuit, begun.Complaint, new SimulatedCar(begun.Circuit, begun.Complaint.Load, fault));
                var repeats = played.Moves.TakeWhile(m => m.Check.Kind != Checks.CheckKind.Repair)
                    .GroupBy(m => m.Check.Id).Sum(g => g.Count() - 1);
                output.WriteLine($"{sheet} {fault}: {repeats} again of {played.Moves.Count}, {played.Minutes:0.0} min, proven {played.IsProven}");
                again.Add(repeats);
            }
        }

        output.WriteLine($"{again.Average():0.00} a car");
        Assert.True(again.Average() <= 3, $"{again.Average():0.00} a car");
    }
}
