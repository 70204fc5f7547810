using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Reporting;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Jobs.Tests.Sessions;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Jobs.Tests.Reporting;

public sealed partial class ReportTests
{
    private static readonly Lazy<JobSession> Proven = new(() => PlayedJob.Play("text", "text"));

    private static readonly Lazy<JobSession> Hostile = new(() => PlayedJob.Play(PlayedJob.Hostile, PlayedJob.Hostile));

    [Fact]
    public void A_proven_job_tells_finding_repair_and_proof()
    {
        var report = ReportBuilder.Of(Proven.Value);

        Assert.Equal(ReportStanding.Proven, report.Standing);
        Assert.Equal("clean-ground G5", report.Finding!.Finding.Repair.Id);
        Assert.True(report.Finding.IsActedUpon);
        Assert.Equal("clean-ground G5", Assert.Single(report.Cost.Repairs).Repair.Id);
        Assert.NotEmpty(report.Proofs);
        Assert.NotEmpty(report.RepairCautions);
        Assert.Subset(report.Cautions.ToHashSet(), report.RepairCautions.ToHashSet());
        Assert.Equal(Proven.Value.MinutesSpent, report.Cost.Minutes);
        Assert.Equal(Proven.Value.Entries.Select(e => e.Number), report.Steps.Select(s => s.Number));
    }

    [Fact]
    public void Every_number_read_stands_beside_what_a_healthy_car_shows()
    {
        var numbers = ReportBuilder.Of(Proven.Value).Steps.Where(s => s.Read is ReadingParse.Number).ToList();

        Assert.True(numbers.Count > 3);
        Assert.All(numbers, s =>
        {
            var healthy = Assert.IsType<ReadingParse.Number>(s.Healthy);
            Assert.True(healthy.Resolution >= ((ReadingParse.Number)s.Read!).Resolution, s.Number.ToString(CultureInfo.InvariantCulture));
            // A few millivolts read where there should be twelve volts do not give the meter more digits for these.
            Assert.InRange(Math.Abs(healthy.Value) / healthy.Resolution!.Value, 0, Meter.Default.Counts);
        });
        // Before the repair the ground shows its volts, after it the healthy car's few millivolts.
        Assert.Contains(numbers, s => s.Sort == StepSort.Reading
            && Math.Abs(((ReadingParse.Number)s.Read!).Value - ((ReadingParse.Number)s.Healthy!).Value) > 1);
        Assert.All(numbers.Where(s => s.Sort == StepSort.Proof), s => Assert.InRange(
            ((ReadingParse.Number)s.Read!).Value / ((ReadingParse.Number)s.Healthy!).Value, 0.5, 2));
    }

    [Fact]
    public void What_is_told_of_the_people_later_counts_and_the_rest_stays()
    {
        var session = SessionJob.Open(SessionJob.Opened());
        session.Describe("first", "owner", "worker");
        session.Describe("second", null, null);

        var report = ReportBuilder.Of(SessionJob.Open(JobDocument.Of(session.Document.Events.Select(e => StoredEvent.Read(e.Line)!))));

        Assert.Equal(("second", "owner", "worker"), (report.Vehicle, report.Owner, report.Worker));
        Assert.Equal(ReportStanding.GoingOn, report.Standing);
    }

    [Fact]
    public void What_was_taken_back_is_told_with_its_reason()
    {
        var session = SessionJob.Began("dim");
        session.Withdraw(reason: "wrong lamp");

        var gone = Assert.Single(ReportBuilder.Of(session).TakenBack);

        Assert.Equal(("dim", "wrong lamp"), (gone.Typed, gone.Reason));
        Assert.Contains("wrong lamp", PlayedJob.Html(session, ReportReader.Colleague), StringComparison.Ordinal);
    }

    [Fact]
    public void A_repair_without_proof_says_so()
    {
        var session = PlayedJob.Play();
        while (session.State.Proofs.Any())
        {
            Assert.IsType<SessionOutcome.Kept>(session.Withdraw());
        }

        Assert.Equal(ReportStanding.Repaired, ReportBuilder.Of(session).Standing);
        Assert.Contains("Repaired, not yet proven", PlayedJob.Html(session, ReportReader.Owner), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ReportReader.Owner)]
    [InlineData(ReportReader.Colleague)]
    public void No_letter_that_was_typed_becomes_a_tag(ReportReader reader)
    {
        var plain = PlayedJob.Html(Proven.Value, reader);
        var hostile = PlayedJob.Html(Hostile.Value, reader);

        Assert.Equal(Tags(plain), Tags(hostile));
        Assert.DoesNotContain('\u0001', hostile);
    }

    [Fact]
    public void A_page_holds_no_script_and_fetches_nothing()
    {
        var html = PlayedJob.Html(Proven.Value, ReportReader.Colleague);

        Assert.Contains("default-src &#x27;none&#x27;", html, StringComparison.Ordinal);
        Assert.DoesNotMatch("(?i)<script|<link|<iframe|<object|javascript:|https?://|url\\(| style=| on[a-z]+=", html);
    }

    [Fact]
    public void The_owner_sees_what_is_around_the_fault_and_a_colleague_the_whole()
    {
        var report = ReportBuilder.Of(Proven.Value);
        var texts = PlayedJob.Texts(Language.English);
        var (owner, whole) = (
            ReportDrawing.Svg(Proven.Value, report, texts, ReportReader.Owner), ReportDrawing.Svg(Proven.Value, report, texts, ReportReader.Colleague));
        var window = Window(owner);
        var mark = Fault().Match(owner).Groups.Values.Skip(1).Select(g => double.Parse(g.Value, System.Globalization.CultureInfo.InvariantCulture)).ToList();

        Assert.True(window[2] < Window(whole)[2] && window[3] < Window(whole)[3]);
        Assert.InRange(mark[0], window[0], window[0] + window[2]);
        Assert.InRange(mark[1], window[1], window[1] + window[3]);
    }

    private static List<double> Window(string svg) => [.. ViewBox().Match(svg).Groups[1].Value.Split(' ')
        .Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture))];

    [GeneratedRegex("viewBox=\"([^\"]+)\"")]
    private static partial Regex ViewBox();

    [GeneratedRegex("class=\"hs-fault\" x=\"([0-9.]+)\" y=\"([0-9.]+)\"")]
    private static partial Regex Fault();

    [Fact]
    public void The_json_says_what_the_report_says()
    {
        var report = ReportBuilder.Of(Proven.Value);
        var json = JsonDocument.Parse(ReadingsJson.Write(report, PlayedJob.Texts(Language.English))).RootElement;

        Assert.Equal("proven", json.GetProperty("standing").GetString());
        Assert.Equal(report.Steps.Length, json.GetProperty("steps").GetArrayLength());
        Assert.Equal("G5 resistive", json.GetProperty("finding").GetProperty("blamed")[0].GetProperty("id").GetString());
        Assert.True(json.GetProperty("finding").GetProperty("odds").GetDouble() < 1);
    }

    /// <summary>The tags in their order; items of the lists that hold typed text are as many in both.</summary>
    private static List<string> Tags(string html) => [.. Tag().Matches(html[html.IndexOf("<body", StringComparison.Ordinal)..]).Select(m => m.Value)];

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();
}
