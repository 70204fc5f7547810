using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Drawing.Tests;

/// <summary>A circuit of as many parts as wanted: branches of a fuse, a relay that a module pulls in, a plug, a load, a ground.</summary>
internal static class LargeCircuit
{
    private const int PartsOfABranch = 5, BranchesOfAModule = 8;

    public static Circuit Of(int parts)
    {
        var (list, wiring) = (new StringBuilder(), new StringBuilder());
        var branches = (parts - 8) / PartsOfABranch;
        for (var i = 1; i <= branches; i++)
        {
            var n = i.ToString(CultureInfo.InvariantCulture);
            var module = ((i - 1) / BranchesOfAModule) + 1;
            if ((i - 1) % BranchesOfAModule == 0)
            {
                var outputs = string.Join(", ", Enumerable.Range(i, BranchesOfAModule).Select(o => $$"""o{{o}}: { side: low }"""));
                list.AppendLine(CultureInfo.InvariantCulture, $$"""  ECU{{module}}: { kind: module, feeds: [30], grounds: [31], outputs: { {{outputs}} } }""");
                wiring.AppendLine(CultureInfo.InvariantCulture, $"  - BUS -> wire 1mm2 1m RD/GN -> ECU{module}.30");
                wiring.AppendLine(CultureInfo.InvariantCulture, $"  - ECU{module}.31 -> wire 1mm2 1m BN -> G0");
            }

            list.AppendLine(CultureInfo.InvariantCulture, $$"""
                  F{{n}}: { kind: fuse, rating: 15 A, place: box, slot: "{{n}}", type: mini }
                  K{{n}}: { kind: relay, coil: 85 ohm, place: box }
                  C{{n}}: { kind: connector, b: L{{n}}, place: rear }
                  L{{n}}: { kind: lamp, name: Lamp number {{n}}, watts: 21 W, place: rear }
                  G{{n}}: { kind: ground, place: rear }
                """);
            wiring.AppendLine(CultureInfo.InvariantCulture, $"""
                  - BUS -> F{n} -> wire 1mm2 1m RD/YE -> K{n}.30
                  - F{n}.2 -> K{n}.86
                  - K{n}.85 -> wire 0.5mm2 1m GY -> ECU{module}.o{n}
                  - K{n}.87 -> wire 1.5mm2 2m YE/BK -> C{n}.1 -> L{n} -> C{n}.2 -> wire 1.5mm2 1m BN -> G{n}
                """);
        }

        var sheet = $"""
            sheet: 1
            title: Many branches
            conditions:
              key off: {"{}"}
            places:
              box:  {"{ open: 1 min }"}
              rear: {"{ open: 5 min }"}
            parts:
              BAT: {"{ kind: battery }"}
              F0:  {"{ kind: fuse, rating: 80 A }"}
              BUS: {"{ kind: splice }"}
              G0:  {"{ kind: ground }"}
            {list}
            wiring:
              - BODY -> wire 25mm2 0.4m BK -> BAT.neg
              - BAT.pos -> wire 25mm2 0.4m RD -> F0 -> BUS
            {wiring}
            """;
        var reading = SheetReader.Read(sheet);
        return reading.Circuit ?? throw new InvalidOperationException(string.Join("; ", reading.Problems.Select(p => $"{p.Line}: {p.Message}")));
    }
}
