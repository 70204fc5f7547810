using Halfsplit.Circuits.Sheets;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class ShelfTests
{
    [Fact]
    public void It_finds_the_sheet_for_what_people_say()
    {
        using var shell = new Shell();

        ApprovedText.Matches("shelf-search", Shell.Expect(0, shell.Run("shelf", "cranks but won't start")).Output);
    }

    [Fact]
    public void It_answers_in_the_language_that_is_spoken()
    {
        using var shell = new Shell();
        var found = Shell.Expect(0, shell.Run("shelf", "Hupe", "geht", "nicht", "--language", "de")).Output;

        Assert.Contains("horn: ", found, StringComparison.Ordinal);
        Assert.Contains("Los geht es mit", found, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_words_it_lists_every_sheet_under_its_system()
    {
        using var shell = new Shell();
        var all = Shell.Expect(0, shell.Run("shelf")).Output;

        Assert.All(ShippedSheets.Names, name => Assert.Contains($"\n  {name}: ", all, StringComparison.Ordinal));
        Assert.Contains("\nStarting\n", all, StringComparison.Ordinal);
        Assert.DoesNotContain("shelf.", all, StringComparison.Ordinal);
    }

    [Fact]
    public void What_it_does_not_have_it_says()
    {
        using var shell = new Shell();

        Assert.Contains("halfsplit shelf", Shell.Expect(0, shell.Run("shelf", "zzyzx")).Output, StringComparison.Ordinal);
        Assert.Equal(0, Shell.Expect(0, shell.Run("shelf", "zzyzx", "--json")).Json.GetProperty("complaints").GetArrayLength());
    }

    [Fact]
    public void What_no_circuit_is_about_leads_to_the_bench()
    {
        using var shell = new Shell();
        var said = Shell.Expect(0, shell.Run("shelf", "battery", "goes", "flat", "overnight")).Output;

        Assert.StartsWith("For this there is an aid of the bench", said, StringComparison.Ordinal);
        Assert.Contains("drain-hunt --help", said, StringComparison.Ordinal);
        Assert.Equal("drain-hunt", Shell.Expect(0, shell.Run("shelf", "Ruhestrom", "--json")).Json.GetProperty("aid").GetString());
        Assert.Equal(0, shell.Run("bench", "drain-hunt", "--help").Code);
    }

    [Fact]
    public void Scripts_read_the_best_first()
    {
        using var shell = new Shell();
        var first = Shell.Expect(0, shell.Run("shelf", "fuel pump does not run", "--json")).Json.GetProperty("complaints")[0];

        Assert.Equal("fuel", first.GetProperty("system").GetString());
        Assert.Equal(12, first.GetProperty("volts").GetInt32());
        Assert.Equal("Fuel pump", first.GetProperty("load").GetString());
    }

    [Fact]
    public void What_is_not_understood_is_said()
    {
        using var shell = new Shell();

        Assert.StartsWith("No sheet on the shelf has: airbag.\n", Shell.Expect(0, shell.Run("shelf", "airbag lamp on")).Output, StringComparison.Ordinal);
        var beside = Shell.Expect(0, shell.Run("shelf", "dome light when the door opens")).Output;
        Assert.StartsWith("No sheet on the shelf has: dome. What is listed", beside, StringComparison.Ordinal);
        Assert.Contains("\n  central-locking: ", beside, StringComparison.Ordinal);
        Assert.Equal("airbag", Shell.Expect(0, shell.Run("shelf", "airbag lamp on", "--json")).Json.GetProperty("unknown")[0].GetString());
    }

    /// <summary>Of several fuses in a load's way the listing names the one that was asked for.</summary>
    [Fact]
    public void A_fuse_that_blows_is_named_with_each_complaint()
    {
        using var shell = new Shell();

        Assert.Contains("\"pump does not run\" (Fuel pump; F19 15 A)", Shell.Expect(0, shell.Run("shelf", "pump blows the 15 A fuse")).Output, StringComparison.Ordinal);
    }
}
