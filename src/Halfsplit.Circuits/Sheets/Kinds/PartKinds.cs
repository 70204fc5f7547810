using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Sheets.Kinds;

/// <summary>Every kind of part a sheet can have.</summary>
internal static class PartKinds
{
    public static ImmutableArray<PartKind> All { get; } =
    [
        new BatteryKind(), new AlternatorKind(), new StarterKind(),
        new FuseKind(), new FusibleLinkKind(), new BreakerKind(), new PtcKind(),
        new RelayKind(), new SwitchKind(), new ModuleKind(),
        new MotorKind(), new LampKind(), new LedKind(), new HeaterKind(), new SounderKind(), new SolenoidKind(),
        new ResistorKind(), new SensorKind(), new DiodeKind(),
        new ConnectorKind(), new SpliceKind(), new GroundKind(), new MetalKind(),
    ];

    public static PartKind? Find(string word) => All.FirstOrDefault(k => k.Word == word);

    public static PartKind Of(Part part) => All.First(k => k.Describes(part));
}
