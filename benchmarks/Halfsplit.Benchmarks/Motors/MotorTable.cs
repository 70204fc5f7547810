using System.Globalization;
using Halfsplit.Bench.Motors;
using Halfsplit.Bench.Tests.Motors;

namespace Halfsplit.Benchmarks.Motors;

/// <summary>
/// How well speed and faults are read from the currents of simulated motors, over sample rates and noise. The same motors at every run.
/// </summary>
internal static class MotorTable
{
    private const int MotorsOfAKind = 40;

    private const double Seconds = 0.6, RatedAmps = 5.5;

    private static readonly double[] Rates = [2_500, 5_000, 10_000, 20_000], Noises = [0.005, 0.02, 0.05];

    private sealed record Made(SimulatedMotor Motor, MotorState State);

    public static void Print(TextWriter output)
    {
        output.WriteLine("| samples/s | noise | refused | rpm within 1 % | bars unknown: speed told | of these within 1 % | healthy called so | weak bar | worn brushes | held still | spins free |");
        output.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|");
        foreach (var rate in Rates)
        {
            foreach (var noise in Noises)
            {
                output.WriteLine(Row(rate, noise));
            }
        }
    }

    private static string Row(double rate, double noise)
    {
        var random = new Random(7);
        var (refused, all, close, told, closeUnknown, turning) = (0, 0, 0, 0, 0, 0);
        var right = new Dictionary<MotorState, (int Right, int All)>();
        foreach (var (motor, state) in Motors(random, noise))
        {
            all++;
            var trace = motor.Trace(rate, Seconds, random.Next());
            var reading = MotorReading.Of(new MotorQuestion(trace, motor.Bars, RatedAmps));
            if (reading.Result is not { } result)
            {
                refused++;
                continue;
            }

            var before = right.GetValueOrDefault(state);
            right[state] = (before.Right + (result.States[0].State == state ? 1 : 0), before.All + 1);
            if (!motor.IsSeized)
            {
                turning++;
                close += IsClose(result, motor) ? 1 : 0;
                if (MotorReading.Of(new MotorQuestion(trace)).Result is { Turns: not null } blind)
                {
                    told++;
                    closeUnknown += IsClose(blind, motor) ? 1 : 0;
                }
            }
        }

        string Share(MotorState state) => right.TryGetValue(state, out var r) ? Percent(r.Right, r.All) : "-";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {rate:0} | {100 * noise:0.#} % | {Percent(refused, all)} | {Percent(close, turning)} | {Percent(told, turning)} | {Percent(closeUnknown, told)} | {Share(MotorState.Healthy)} | {Share(MotorState.WeakBar)} | {Share(MotorState.WornBrushes)} | {Share(MotorState.Seized)} | {Share(MotorState.SpinsFree)} |");
    }

    private static IEnumerable<Made> Motors(Random random, double noise)
    {
        foreach (var state in Enum.GetValues<MotorState>())
        {
            for (var i = 0; i < MotorsOfAKind; i++)
            {
                var motor = new SimulatedMotor(
                    3000 + (4000 * random.NextDouble()), random.Next(6, 13), RatedAmps * (0.85 + (0.3 * random.NextDouble())),
                    0.06 + (0.14 * random.NextDouble()), Noise: noise);
                yield return new Made(
                    state switch
                    {
                        MotorState.WeakBar => motor with { WeakBar = 0.08 + (0.25 * random.NextDouble()) },
                        MotorState.WornBrushes => motor with { Arcing = 0.08 + (0.1 * random.NextDouble()) },
                        MotorState.Seized => motor with { IsSeized = true, RunningAmps = RatedAmps * (2.3 + random.NextDouble()) },
                        MotorState.SpinsFree => motor with { RunningAmps = RatedAmps * (0.3 + (0.25 * random.NextDouble())), Rpm = Math.Min(7000, motor.Rpm * 1.2) },
                        _ => motor,
                    },
                    state);
            }
        }
    }

    private static bool IsClose(MotorResult result, SimulatedMotor motor) =>
        result.Turns is { } turns && Math.Abs((turns.Value / motor.Rpm) - 1) < 0.01;

    private static string Percent(int part, int whole) => whole == 0 ? "-" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * part / whole:0} %");
}
