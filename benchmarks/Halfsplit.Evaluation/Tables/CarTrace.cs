using System.Globalization;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Evaluation.Play;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Evaluation.Tables;

/// <summary>Plays one car again and tells what happened, step by step.</summary>
public static class CarTrace
{
    public static void Print(Workplace place, string sheet, int number, TestCar car, IPlayer player, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(player);
        ArgumentNullException.ThrowIfNull(writer);
        var attempt = new Attempt(place, car);
        attempt.Play(new Told(player, writer));
        var result = CarResult.Of(sheet, number, player, attempt);
        writer.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"  {result.Fault}: proven {result.Proven}, comeback {result.Comeback}, wrong {result.WrongRepairs}, {result.Minutes} min, slips {result.Slips}"));
    }

    /// <summary>A player that says what it does.</summary>
    private sealed class Told(IPlayer player, TextWriter writer) : IPlayer
    {
        public string Name => player.Name;

        public IEnumerable<Move> Play(Attempt attempt)
        {
            foreach (var move in player.Play(attempt))
            {
                var minutes = attempt.Minutes;
                try
                {
                    yield return move;
                }
                finally
                {
                    // Also after the last move, when nobody asks for the next.
                    writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {attempt.Minutes - minutes,6:0.0}  {Tell(move, attempt)}"));
                }
            }
        }

        private static string Tell(Move move, Attempt attempt) => move switch
        {
            Move.Look look => $"{look.Check.Id} => {attempt.Answer}",
            Move.Mend mend => string.Create(CultureInfo.InvariantCulture, $"{mend.Repair.Id} ({mend.Claim?.Odds:0.000}) proofs: ")
                + string.Join("; ", attempt.Proofs.Select(p => p.Value)),
            _ => "closed",
        };
    }
}
