using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Tests.Play;

namespace Halfsplit.Diagnosis.Tests.Explaining;

/// <summary>An investigation with the readings that a simulated car gives.</summary>
internal static class Readings
{
    /// <summary>The reading's id is its place in the list.</summary>
    public static Investigation Of(string sheet, string fault, params string[] checks)
    {
        var circuit = ShippedSheets.Load(sheet);
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        var car = new SimulatedCar(circuit, circuit.Complaints[0].Load, Game.Fault(fault));
        for (var i = 0; i < checks.Length; i++)
        {
            var check = investigation.FindCheck(checks[i]) ?? throw new InvalidOperationException(checks[i]);
            investigation.Record($"{i}", check, car.Answer(check));
        }

        return investigation;
    }

    /// <summary>The number this car shows at a check.</summary>
    public static double Number(string sheet, string check, params string[] faults)
    {
        var circuit = ShippedSheets.Load(sheet);
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        var car = new SimulatedCar(circuit, circuit.Complaints[0].Load, faults.Select(Game.Fault));
        return ((ReadingParse.Number)car.Answer(investigation.FindCheck(check)!)).Value;
    }
}
