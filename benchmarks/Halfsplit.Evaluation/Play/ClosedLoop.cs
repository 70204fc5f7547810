using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Evaluation.Cars;

namespace Halfsplit.Evaluation.Play;

/// <summary>What to play.</summary>
/// <param name="Sheets">Names of shipped sheets.</param>
/// <param name="Cars">Cars a sheet.</param>
/// <param name="Folder">Where the results go, a file for each sheet and variant.</param>
public sealed record ClosedLoopRun(
    ImmutableArray<string> Sheets, int Cars, Variant Variant, ImmutableArray<IPlayer> Players, string Folder, int Threads = 2);

/// <summary>Plays every car with every player. What comes out depends on the numbers of the cars and on nothing else.</summary>
public sealed class ClosedLoop(ClosedLoopRun run, TextWriter progress)
{
    /// <summary>Above this much memory in use a thread begins with an empty engine again.</summary>
    private const long MostBytes = 6L << 30;

    /// <summary>A play that takes longer is worth a line.</summary>
    private const double SlowSeconds = 20;

    private readonly ConcurrentDictionary<string, long> _ticks = new(StringComparer.Ordinal);
    private int _played;
    private int _total;

    /// <summary>The results file of a sheet and variant.</summary>
    public static string PathOf(string folder, string sheet, string variant) => Path.Combine(folder, $"{sheet}.{variant}.jsonl");

    /// <summary>Plays what is not in the files yet.</summary>
    public void Play()
    {
        Directory.CreateDirectory(run.Folder);
        var start = Stopwatch.GetTimestamp();
        foreach (var sheet in run.Sheets)
        {
            Play(sheet);
        }

        progress.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{_played} played in {Stopwatch.GetElapsedTime(start).TotalMinutes:0.0} min"));
        foreach (var (what, ticks) in _ticks.OrderByDescending(t => t.Value))
        {
            progress.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"  {what,-28} {ticks / (double)Stopwatch.Frequency,9:0.0} s of a thread"));
        }
    }

    private void Play(string sheet)
    {
        var path = PathOf(run.Folder, sheet, run.Variant.Name);
        var known = ResultFile.Read(path).Select(r => r.Key).ToHashSet(StringComparer.Ordinal);
        var circuit = ShippedSheets.Load(sheet);
        var lot = new CarLot(sheet, circuit, run.Variant);
        // One complaint after the other: what the engine has worked out for one is of use to its neighbours.
        var cars = new ConcurrentQueue<int>(Enumerable.Range(0, run.Cars)
            .Where(car => run.Players.Any(p => !known.Contains(Key(sheet, car, p))))
            .OrderBy(car => car % circuit.Complaints.Length).ThenBy(car => car));
        _total = _played + (cars.Count * run.Players.Length);
        using var file = ResultFile.Append(path);
        Exception? failure = null;
        var threads = Enumerable.Range(0, run.Threads).Select(_ => new Thread(() =>
        {
            try
            {
                Work(sheet, lot, cars, known, file);
            }
            catch (Exception problem) when (Interlocked.CompareExchange(ref failure, problem, null) is null)
            {
                cars.Clear();
            }
        })).ToList();
        threads.ForEach(t => t.Start());
        threads.ForEach(t => t.Join());
        if (failure is not null)
        {
            throw new InvalidOperationException($"A car of {sheet} could not be played.", failure);
        }
    }

    private void Work(string sheet, CarLot lot, ConcurrentQueue<int> cars, HashSet<string> known, ResultFile file)
    {
        Workplace? place = null;
        while (cars.TryDequeue(out var number))
        {
            var complaint = lot.ComplaintOf(number);
            if (place is null || place.Complaint != complaint || GC.GetTotalMemory(false) > MostBytes)
            {
                place = Timed("opening", () => new Workplace(ShippedSheets.Load(sheet), complaint, run.Variant));
            }

            foreach (var player in run.Players.Where(p => !known.Contains(Key(sheet, number, p))))
            {
                if (Timed("drawing cars", () => lot.Draw(number)) is not { } car)
                {
                    Report(sheet, $"car {number}: no fault makes \"{complaint.Name}\"");
                    continue;
                }

                var attempt = new Attempt(place, car);
                var start = Stopwatch.GetTimestamp();
                Timed(player.Name, () =>
                {
                    attempt.Play(player);
                    return true;
                });
                if (Stopwatch.GetElapsedTime(start).TotalSeconds > SlowSeconds)
                {
                    Report(sheet, $"car {number} took {player.Name} {Stopwatch.GetElapsedTime(start).TotalSeconds.ToString("0", CultureInfo.InvariantCulture)} s");
                }

                file.Write(CarResult.Of(sheet, number, player, attempt));
                if (Interlocked.Increment(ref _played) % 100 == 0)
                {
                    Report(sheet, complaint.Name);
                }
            }
        }
    }

    private string Key(string sheet, int car, IPlayer player) => $"{sheet}|{run.Variant.Name}|{car}|{player.Name}";

    private void Report(string sheet, string text)
    {
        lock (progress)
        {
            progress.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{sheet} {run.Variant.Name}: {_played} of {_total}, {text}, {GC.GetTotalMemory(false) >> 20} MB"));
        }
    }

    private T Timed<T>(string what, Func<T> act)
    {
        var start = Stopwatch.GetTimestamp();
        var made = act();
        _ticks.AddOrUpdate(what, Stopwatch.GetTimestamp() - start, (_, before) => before + Stopwatch.GetTimestamp() - start);
        return made;
    }
}
