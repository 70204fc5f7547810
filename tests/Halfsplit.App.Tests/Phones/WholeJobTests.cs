using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Faults;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>From the complaint to the close on a phone-sized screen, in a folder under a sub-path, with the network cut.</summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class WholeJobTests(PublishedApp app)
{
    private const int MostSteps = 40;

    [Fact]
    public async Task A_whole_job_is_done_offline_and_asks_what_the_engine_asks_on_this_machine()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "/tools/halfsplit", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address);
        var beside = Companion.Of("headlamps", "left headlamp dark", new Fault("F21", "open"));
        await phone.ReadyAsync();
        await phone.OfflineReadyAsync();
        await site.DisposeAsync();
        await phone.Context.SetOfflineAsync(true);
        await phone.ReloadAsync();
        await phone.ReadyAsync();

        await phone.StartJobAsync("Left headlamp dark");
        for (var step = 0; step < MostSteps; step++)
        {
            var (kind, check) = await phone.AskedAsync();
            if (kind == "done")
            {
                break;
            }

            Assert.Equal(beside.Asked?.Id, check);
            var answer = beside.Answer();
            await phone.GiveAsync(kind, answer);
            beside.Take(answer);
            await phone.GoOnAsync(check);
            // What was foreseen is made sure of before the two are compared.
            await phone.SettledAsync();
        }

        Assert.Equal("done", (await phone.AskedAsync()).Kind);
        Assert.True(beside.Session.IsProven);
        await phone.Page.GetByText("Done: the repair is proven").WaitForAsync();
        phone.AssertNoComplaints();

        // The same job in the list, and its file is the terminal's.
        var download = await phone.Page.RunAndWaitForDownloadAsync(() => phone.Page.GetByText("Save as a file").ClickAsync());
        var read = Halfsplit.Jobs.Storage.JobFile.Read(await download.PathAsync());
        Assert.True(read.IsDone, read.Problem?.ToString());
        Assert.Empty(read.Value.Damaged);
        Assert.Equal(Halfsplit.Jobs.Events.JobOutcome.Proven, Halfsplit.Jobs.Events.JobReplay.Replay(read.Value.Document).Closed!.Outcome);
    }
}
