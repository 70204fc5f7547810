using System.Text;
using CsCheck;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Tests.Events;

/// <summary>Generators of everything that a job file can hold.</summary>
internal static class AnyEvent
{
    /// <summary>Any text, well formed as UTF-16, with line breaks, quotes and letters of many scripts among it.</summary>
    public static readonly Gen<string> Text = Gen.OneOf(
        Gen.String.Select(WellFormed),
        Gen.String[Gen.Char["abc \n\r\t\"\\\u0000\u0085\u2028Ωµüşıİ漢{}[],:"], 0, 20]);

    public static readonly Gen<string?> MaybeText = Maybe(Text);

    public static readonly Gen<EventId> Id = Gen.Select(Gen.Long[0, (1L << 48) - 1], Gen.UShort, Gen.ULong)
        .Select((time, high, low) => new EventId(((UInt128)time << 80) | ((UInt128)high << 64) | low));

    public static readonly Gen<DateTimeOffset> At = Gen.Select(Gen.Long[0, 3_000_000_000_000_0000L], Gen.Int[-840, 840])
        .Select((ticks, minutes) => new DateTimeOffset(
            DateTime.UnixEpoch.Ticks + ticks + TimeSpan.FromDays(2).Ticks, TimeSpan.FromMinutes(minutes)));

    public static readonly Gen<double> Finite = Gen.Double.Where(double.IsFinite);

    public static readonly Gen<ReadingValue> Value = Gen.OneOf(
        Gen.Select(Finite, Gen.Enum<Quantity>(), Maybe(Gen.Double[1e-9, 1e6]), Gen.Bool)
            .Select((value, quantity, step, jumps) => (ReadingValue)new ReadingParse.Number(value, quantity, step) { Unsteady = jumps }),
        Gen.Const<ReadingValue>(new ReadingParse.OverLimit()),
        Gen.Int[0, AnswerWord.All.Length - 1].Select(at => (ReadingValue)new ReadingParse.Word(AnswerWord.All[at])));

    public static readonly Gen<JobEvent> Any = Gen.OneOf(Opened(), Reading(), Proof(), Withdrawn(), Skipped(), Noticed(), Found(), Note(), Described(), Repair(), PutBack(), Handed(), Closed());

    public static readonly Gen<StoredEvent> Stored = Any.Select(StoredEvent.Of);

    private static Gen<ValueList<string>> Texts => Text.Array[0, 3].Select(texts => ValueList.Create<string>(texts));

    private static Gen<MeterUsed?> Meter => Maybe(
        Gen.Select(Finite, Finite, Text, Finite).Select((input, step, accuracy, leads) => new MeterUsed(input, step, accuracy, leads)));

    private static Gen<ArrangementUsed> Arrangement =>
        Gen.Select(
                Text,
                Texts,
                Texts,
                Gen.Select(Text, Text).Select((from, to) => new Jumper(from, to)).Array[0, 3],
                Texts)
            .Select((condition, unplugged, removed, jumpers, opened) => new ArrangementUsed(condition)
            {
                Unplugged = unplugged,
                Removed = removed,
                Jumpers = [.. jumpers],
                Opened = opened,
            });

    private static Gen<Observation> Observation =>
        Gen.Select(
                Gen.Select(Text, Text, Text, Text),
                Arrangement,
                Value,
                Gen.Select(MaybeText, MaybeText, MaybeText),
                Gen.Select(Meter, Maybe(Finite)),
                Gen.Bool)
            .Select((texts, arrangement, value, leads, meter, confirmed) =>
                new Observation(texts.Item1, texts.Item2, arrangement, texts.Item3, texts.Item4, value)
                {
                    Red = leads.Item1,
                    Black = leads.Item2,
                    About = leads.Item3,
                    Meter = meter.Item1,
                    LampWatts = meter.Item2,
                    Confirmed = confirmed,
                });

    private static Gen<(EventId Id, DateTimeOffset At, string? By)> Base =>
        Gen.Select(Id, At, MaybeText).Select((id, at, by) => (id, at, by));

    private static Gen<bool?> MaybeFlag => Maybe(Gen.Bool);

    private static Gen<ComplaintMeant?> Meant =>
        Maybe(Gen.Select(Text, Text, Text).Select((load, fares, condition) => new ComplaintMeant(load, fares, condition)));

    private static Gen<MeterAtHand?> MeterAtHand => Maybe(
        Gen.Select(Gen.Select(Finite, Finite, Finite, Finite), Gen.Select(Finite, Finite, Finite, Finite)).Select((a, b) =>
            new MeterAtHand(a.Item1, a.Item2, a.Item3, a.Item4, b.Item1, b.Item2, b.Item3, b.Item4)));

    private static Gen<JobOptions> AtHand =>
        Gen.Select(
                Gen.Select(Maybe(Finite), MaybeFlag, MaybeFlag, MaybeFlag, MaybeFlag, MaybeFlag),
                MeterAtHand)
            .Select((told, meter) => new JobOptions
            {
                LeadMetres = told.Item1,
                Clamp = told.Item2,
                TestLamp = told.Item3,
                ScanTool = told.Item4,
                SpareRelay = told.Item5,
                SmellOfFuelOrImpact = told.Item6,
                MeterAtHand = meter,
            });

    private static Gen<ValueList<CountUsed>> Counts =>
        Gen.Select(Text, Gen.Int[0, 1000], Gen.Double[0, 1000]).Select((name, jobs, expected) => new CountUsed(name, jobs, expected))
            .Array[0, 3].Select(counts => ValueList.Create<CountUsed>(counts));

    private static Gen<HistoryUsed?> Learned => Maybe(
        Gen.Select(Gen.Int[0, 1000], Gen.Int[0, 1000], Finite, Finite, Counts, Counts)
            .Select((jobs, own, kind, circuit, kinds, suspects) => new HistoryUsed(jobs, own, kind, circuit) { Kinds = kinds, Suspects = suspects }));

    private static Gen<JobEvent> Noticed() => Gen.Select(Base, Text, MaybeText)
        .Select((start, name, about) => (JobEvent)new ThingNoticed(start.Id, start.At, name) { By = start.By, About = about });

    private static Gen<JobEvent> Found() => Gen.Select(Gen.Select(Base, Text, Text, Text, Texts), Gen.OneOf(Gen.Const((double?)null), Gen.Double[0, 100].Select(d => (double?)d)), Gen.Bool)
        .Select((told, ohms, confirmed) => (JobEvent)new PartFound(told.Item1.Id, told.Item1.At, told.Item2, told.Item3, told.Item4)
        {
            By = told.Item1.By, Typed = told.Item5, Ohms = ohms, Confirmed = confirmed,
        });

    private static Gen<JobEvent> Opened() =>
        Gen.Select(
                Gen.Select(Base, AtHand, Meant, Learned),
                Gen.Select(Text, Text, Text, Text),
                Gen.Select(Text, Text),
                Gen.Select(Texts, Texts, Gen.Bool, Maybe(Gen.Decimal), MaybeText, Meter, Gen.Bool))
            .Select((start, sheet, told, options) => (JobEvent)new JobOpened(
                start.Item1.Id, start.Item1.At, sheet.Item1, sheet.Item2, sheet.Item3, sheet.Item4)
            {
                By = start.Item1.By,
                Complaint = told.Item1,
                Meant = start.Item3,
                VehicleNotes = told.Item2,
                Learned = start.Item4,
                Options = start.Item2 with
                {
                    ToolsAtHand = options.Item1,
                    UnreachablePlaces = options.Item2,
                    HelperPresent = options.Item3,
                    RemoteStarterPresent = options.Item7,
                    ValueOfAnHour = options.Item4,
                    Currency = options.Item5,
                    Meter = options.Item6,
                },
            });

    private static Gen<JobEvent> Reading() => Gen.Select(Base, Observation)
        .Select((start, seen) => (JobEvent)new ReadingTaken(start.Id, start.At, seen) { By = start.By });

    private static Gen<JobEvent> Proof() => Gen.Select(Base, Observation, Maybe(Id))
        .Select((start, seen, proves) => (JobEvent)new ProofTaken(start.Id, start.At, seen) { By = start.By, Proves = proves });

    private static Gen<JobEvent> Withdrawn() => Gen.Select(Base, Id, MaybeText)
        .Select((start, target, reason) => (JobEvent)new ReadingWithdrawn(start.Id, start.At, target) { By = start.By, Reason = reason });

    private static Gen<JobEvent> Skipped() => Gen.Select(Base, Gen.Enum<SkipReason>(), MaybeText, MaybeText, MaybeText)
        .Select((start, reason, check, place, text) => (JobEvent)new CheckSkipped(start.Id, start.At, reason)
        {
            By = start.By,
            Check = check,
            Place = place,
            Text = text,
        });

    private static Gen<JobEvent> Note() => Gen.Select(Base, Text)
        .Select((start, text) => (JobEvent)new NoteWritten(start.Id, start.At, text) { By = start.By });

    private static Gen<JobEvent> Described() => Gen.Select(Base, MaybeText, MaybeText, MaybeText)
        .Select((start, vehicle, owner, worker) => (JobEvent)new JobDescribed(start.Id, start.At)
        {
            By = start.By,
            Vehicle = vehicle,
            Owner = owner,
            Worker = worker,
        });

    private static Gen<JobEvent> Repair() =>
        Gen.Select(Base, Gen.Select(Text, Text), Maybe(Finite), Maybe(Gen.Decimal), Gen.Select(MaybeText, MaybeText))
            .Select((start, names, minutes, price, told) => (JobEvent)new RepairDone(start.Id, start.At, names.Item1, names.Item2)
            {
                By = start.By,
                Minutes = minutes,
                Price = price,
                Currency = told.Item1,
                Text = told.Item2,
            });

    private static Gen<JobEvent> PutBack() => Gen.Select(Base, Texts, Maybe(Finite))
        .Select((start, items, minutes) => (JobEvent)new PutBackDone(start.Id, start.At) { By = start.By, Items = items, Minutes = minutes });

    private static Gen<JobEvent> Handed() => Gen.Select(Base, MaybeText, MaybeText)
        .Select((start, to, text) => (JobEvent)new HandedOver(start.Id, start.At) { By = start.By, To = to, Text = text });

    private static Gen<JobEvent> Closed() => Gen.Select(Base, Gen.Enum<JobOutcome>(), MaybeText)
        .Select((start, outcome, text) => (JobEvent)new JobClosed(start.Id, start.At, outcome) { By = start.By, Text = text });

    private static Gen<T?> Maybe<T>(Gen<T> gen, T? none = null)
        where T : class => Gen.Select(Gen.Bool, gen).Select((given, value) => given ? value : none);

    private static Gen<T?> Maybe<T>(Gen<T> gen)
        where T : struct => Gen.Select(Gen.Bool, gen).Select((given, value) => given ? (T?)value : null);

    private static string WellFormed(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text));
}
