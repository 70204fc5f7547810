using Halfsplit.App.Desk;
using Halfsplit.App.Views;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Drawing;
using Halfsplit.Drawing.Layers;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.App.Showing;

/// <summary>The circuit, a part of it, and what would be read between two points of it.</summary>
internal static class CircuitViews
{
    private static readonly Instrument[] Offered =
        [Instrument.Volts, Instrument.VoltsLowImpedance, Instrument.Ohms, Instrument.Continuity, Instrument.TestLamp];

    /// <param name="asked">The check that is asked now.</param>
    public static CircuitView Of(JobSession session, string? condition, Check? asked)
    {
        var circuit = session.Circuit;
        var odds = OddsByPart(session);
        var shown = condition ?? session.Position.Arrangement.Condition;
        return new CircuitView(
            Drawing(session, shown, asked),
            [.. circuit.Parts.Where(p => p is not Splice).Select(p => Part(circuit, p, odds.GetValueOrDefault(p.Id)))],
            [.. circuit.Conditions.Select(c => c.Name)], shown,
            [.. Offered.Select(i => new InstrumentView(i.Name(), AppTexts.Sentence(AppTexts.Say($"instrument.{i.Name()}"))))]);
    }

    /// <summary>The circuit with the likeliest car's volts and current, the suspects, the readings and the leads.</summary>
    private static string Drawing(JobSession session, string condition, Check? asked)
    {
        var finding = asked?.Kind == CheckKind.Repair ? session.Investigation.PresentFinding() : session.FindingBeforeRepair;
        var point = new CircuitSimulator(session.Investigation.Network)
            .Simulate(session.Position.Arrangement.In(condition), LikeliestFaults(session));
        return CircuitDrawing.Svg(session.Circuit, new DrawingOptions
        {
            Texts = AppTexts.Catalog,
            IdPrefix = "circuit-",
            Layers = [new PredictionLayer(point), .. JobLayers.Of(session, EntryViews.Value, asked, finding)],
        });
    }

    /// <summary>A part as it stands in the likeliest car; null where there is no such part.</summary>
    public static PartStateView? State(JobSession session, string id, string? condition)
    {
        var circuit = session.Circuit;
        if (circuit.Find(id) is not { } part)
        {
            return null;
        }

        var now = session.Position.Arrangement;
        var point = new CircuitSimulator(session.Investigation.Network)
            .Simulate(condition is null ? now : now.In(condition), LikeliestFaults(session));
        return new PartStateView(
            id, part.Notes.Name ?? "", part.Notes.Place ?? "", Slot(circuit, part), Doing(point, part),
            [.. circuit.Terminals.Where(t => t.Part == id).Select(t => AppTexts.Say("app.part.volts", t, Digits(point.Volts(t))))],
            [.. session.Investigation.Suspects.Where(s => s.Suspect.Modes.Any(m => m.Owner == id) && s.Odds >= 0.0005)
                .Select(s => SuspectViews.View(session, s))],
            [.. part.Notes.Cautions.Select(c => AppTexts.Catalog.Say(Cautions.Of(c)))]);
    }

    /// <summary>The slot, and where it is to be found in a box that the sheet describes.</summary>
    private static string Slot(Circuit circuit, Part part) => SlotWords.Seat(circuit, part) is { } seat
        ? AppTexts.Say("app.part.slot", part.Notes.Slot!, SlotWords.Say(seat))
        : part.Notes.Slot ?? "";

    /// <summary>The check that reads between two points; null where the points are none.</summary>
    public static Check? CheckOf(JobSession session, PointsWish points)
    {
        var (red, black) = (TerminalName.Parse(points.Red), TerminalName.Parse(points.Black));
        var network = session.Investigation.Network;
        if (!network.HasTerminal(red) || !network.HasTerminal(black) || network.NodeOf(red) == network.NodeOf(black)
            || !InstrumentNames.TryParse(points.Instrument, out var instrument))
        {
            return null;
        }

        var now = session.Position.Arrangement with { Opened = [] };
        var arrangement = points.Condition is { } condition ? now.In(condition) : now;
        return Check.Create(
            CheckKind.Reading,
            instrument switch
            {
                Instrument.Continuity => CheckSubject.Buzzer,
                Instrument.TestLamp => CheckSubject.LampGlow,
                _ => CheckSubject.Number,
            },
            arrangement, new Probe(instrument, red, black));
    }

    /// <summary>What would be read, and why nobody should where that is so.</summary>
    public static BetweenView Between(JobSession session, Check check)
    {
        var circuit = session.Circuit;
        var healthy = session.Investigation.ExpectedHealthy(check);
        var (scale, words) = ScaleViews.Of(session.Investigation, check);
        var untouchable = new[] { check.Probe.Red, check.Probe.Black }
            .Select(t => t is { } touched ? circuit.Find(touched.Part) : null).OfType<Part>()
            .FirstOrDefault(p => !p.Notes.Probe || Cautions.ForbidProbing(circuit, p));
        var refusal = untouchable is not null ? AppTexts.Say("app.between.untouchable", untouchable.Id)
            : IsLive(session, check) ? AppTexts.Say("app.between.live")
            : null;
        return new BetweenView(
            AppTexts.Sentence(AppTexts.Catalog.Say(CheckTitle.Of(circuit, check))),
            healthy.Mean is { } mean ? AppTexts.Say("app.scale.about", Digits(mean), ScaleViews.Unit(check))
                : healthy.Word is null ? AppTexts.Say("app.between.nothing") : ScaleViews.Word(circuit, check, healthy.Word),
            scale, words, refusal, CautionViews.Of(Cautions.For(circuit, session.Investigation.Options, session.Position, check)));
    }

    /// <summary>Ohms where any volts stand, in the healthy or in the likeliest car.</summary>
    private static bool IsLive(JobSession session, Check check)
    {
        if (check.Probe.Instrument is not (Instrument.Ohms or Instrument.Continuity))
        {
            return false;
        }

        var simulator = new CircuitSimulator(session.Investigation.Network);
        return new[] { [], LikeliestFaults(session) }.Any(faults =>
            simulator.Read(check.Arrangement, faults, check.Probe).Abstains == Abstention.LiveCircuit);
    }

    private static Fault[] LikeliestFaults(JobSession session) =>
        session.Entries.Count == 0 ? [] : [.. session.Investigation.Suspects[0].Faults];

    private static PartView Part(Circuit circuit, Part part, double odds) => new(
        part.Id, part.Notes.Name ?? "", part.Kind, part.Notes.Place ?? "", odds, OddsWords.Of(odds),
        [.. circuit.Terminals.Where(t => t.Part == part.Id).Select(t => t.ToString())],
        part.Notes.Probe && !Cautions.ForbidProbing(circuit, part));

    private static Dictionary<string, double> OddsByPart(JobSession session)
    {
        var odds = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var suspect in session.Investigation.Suspects)
        {
            foreach (var owner in suspect.Suspect.Modes.Select(m => m.Owner).Distinct())
            {
                odds[owner] = odds.GetValueOrDefault(owner) + suspect.Odds;
            }
        }

        return odds;
    }

    private static string Doing(OperatingPoint point, Part part) => part switch
    {
        Load load => AppTexts.Say($"app.part.load-{point.Load(load.Id).Condition.ToString().ToLowerInvariant()}", Digits(point.Load(load.Id).Amps)),
        Relay => AppTexts.Say(point.IsPulledIn(part.Id) ? "app.part.pulled-in" : "app.part.at-rest"),
        Fuse => AppTexts.Say(point.IsBlown(part.Id) ? "app.part.blown" : "app.part.whole", Digits(point.FuseAmps(part.Id))),
        Module => AppTexts.Say(point.IsAwake(part.Id) ? "app.part.awake" : "app.part.asleep"),
        _ => "",
    };

    private static string Digits(double value) => (Math.Round(value, 2) + 0.0).ToString("0.00", AppTexts.Formats);
}
