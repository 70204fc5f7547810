using System.Collections.Immutable;
using CsCheck;
using Halfsplit.Jobs.Events;
using Xunit;

namespace Halfsplit.Jobs.Tests.Events;

public class JobEventsMergeTests
{
    // Few ids and contents, so that sets overlap and conflict often; the same content in two spellings.
    private static readonly Gen<StoredEvent> FewEvents =
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 2], Gen.Bool).Select((id, text, spelled) => StoredEvent.Read(
            spelled
                ? $$"""{ "id":"0000000000000000000000000{{id}}", "event":"note-written", "text":"\u0061{{text}}","at":"2026-03-04T15:06:07Z"}"""
                : $$"""{"event":"note-written","id":"0000000000000000000000000{{id}}","at":"2026-03-04T15:06:07Z","text":"a{{text}}"}""")!);

    private static readonly Gen<ImmutableArray<StoredEvent>> Sets =
        Gen.OneOf(FewEvents.Array[0, 6], AnyEvent.Stored.Array[0, 4]).Select(events => events.ToImmutableArray());

    [Fact]
    public void Merging_is_commutative_associative_and_idempotent() => Gen.Select(Sets, Sets, Sets).Sample((a, b, c) =>
    {
        Assert.Equal(JobEvents.Merge(a, b), JobEvents.Merge(b, a));
        Assert.Equal(JobEvents.Merge(JobEvents.Merge(a, b), c), JobEvents.Merge(a, JobEvents.Merge(b, c)));
        var merged = JobEvents.Merge(a, b);
        Assert.Equal(merged, JobEvents.Merge(merged, merged));
        Assert.Equal(merged, JobEvents.Merge(merged, a));
    });

    [Fact]
    public void Nothing_is_lost_and_ids_rise() => Gen.Select(Sets, Sets).Sample((a, b) =>
    {
        var merged = JobEvents.Merge(a, b);
        Assert.Equal(merged.Select(stored => stored.Id).Order(), merged.Select(stored => stored.Id));
        // Each content is there exactly once.
        var contents = a.Concat(b).Select(stored => (stored.Id, stored.Event)).Distinct().OrderBy(pair => pair.Id);
        Assert.Equal(contents.Count(), merged.Length);
        Assert.Equal(contents.ToHashSet(), merged.Select(stored => (stored.Id, stored.Event)).ToHashSet());
    });

    [Fact]
    public void One_id_with_two_contents_is_reported_and_both_are_kept()
    {
        var a = Note("01ARYZ6S410000000000000000", "one");
        var b = Note("01ARYZ6S410000000000000000", "two");
        var other = Note("01ARYZ6S410000000000000001", "three");
        var merged = JobDocument.Of([a, other]).Merge(JobDocument.Of([b, other]));
        Assert.Equal([a, b, other], merged.Events);
        var conflict = Assert.Single(merged.Conflicts);
        Assert.Equal("job.event-conflict", conflict.Code);
        Assert.Equal(["01ARYZ6S410000000000000000", 2], conflict.Arguments);
    }

    [Fact]
    public void The_same_event_in_another_spelling_is_no_conflict()
    {
        var a = StoredEvent.Read("""{"event":"x","id":"01ARYZ6S410000000000000000","n":{"b":1,"a":"é"}}""")!;
        var b = StoredEvent.Read("""{ "id":"01ARYZ6S410000000000000000", "n":{"a":"\u00e9", "b":1}, "event":"x"}""")!;
        var merged = JobDocument.Of([a]).Merge(JobDocument.Of([b]));
        Assert.Single(merged.Events);
        Assert.Empty(merged.Conflicts);
    }

    [Fact]
    public void A_document_reads_back_from_its_lines() => AnyEvent.Stored.Array[0, 5].Sample(events =>
    {
        var document = JobDocument.Of(events);
        var reading = JobDocument.Read(document.ToJsonLines());
        Assert.Equal(document, reading.Document);
        Assert.True(reading.HasHead);
        Assert.Empty(reading.Damaged);
        Assert.False(reading.EndsInsideLine);
    });

    private static StoredEvent Note(string id, string text) =>
        StoredEvent.Read($$"""{"event":"note-written","id":"{{id}}","at":"2026-03-04T15:06:07Z","text":"{{text}}"}""")!;
}
