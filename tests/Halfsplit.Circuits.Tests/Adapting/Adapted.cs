using Halfsplit.Circuits.Adapting;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Adapting;

/// <summary>Shipped sheets with changes in words made to them.</summary>
internal static class Adapted
{
    public static readonly TextCatalog Texts = new(Language.English, CircuitTexts.Source);

    /// <summary>The circuit after all changes, each of which must be possible and leave a valid sheet.</summary>
    public static Circuit Of(string sheet, params string[] changes)
    {
        var circuit = ShippedSheets.Load(sheet);
        foreach (var text in changes)
        {
            circuit = One(circuit, text).Circuit!;
        }

        return circuit;
    }

    public static Adaptation One(Circuit circuit, string text)
    {
        var done = SheetAdapter.Apply(circuit, Change(text));
        Assert.True(done.Circuit is not null, done.Problem is { } problem ? Texts.Say(problem) : text);
        IsValid(done.Circuit);
        return done;
    }

    public static SheetChange Change(string text)
    {
        var change = ChangeText.Parse(text, out var problem);
        Assert.True(change is not null, problem is null ? text : Texts.Say(problem));
        return change;
    }

    public static Message Refused(string sheet, string text)
    {
        var done = SheetAdapter.Apply(ShippedSheets.Load(sheet), Change(text));
        Assert.Null(done.Circuit);
        return done.Problem!;
    }

    /// <summary>No errors, and the same when it is written and read.</summary>
    public static void IsValid(Circuit circuit)
    {
        Assert.DoesNotContain(CircuitLint.Check(circuit), p => p.Severity == ProblemSeverity.Error);
        var read = SheetReader.Read(SheetWriter.Write(circuit));
        Assert.Empty(read.Problems);
        Assert.Equal(CircuitDump.Of(circuit), CircuitDump.Of(read.Circuit!));
    }
}
