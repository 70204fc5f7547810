using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Readings;

public class ReadingTextWordTests
{
    public static TheoryData<string> WordIds => [.. AnswerWord.All.Select(word => word.Id)];

    [Theory]
    [MemberData(nameof(WordIds))]
    public void Every_word_is_taken_by_its_id_and_spelled_out_in_any_case(string id)
    {
        var word = AnswerWord.Find(id)!;
        var everything = ExpectedAnswer.WordOnly([.. AnswerWord.All]);
        string[] forms = [word.Id, word.Text, word.Text.ToUpperInvariant(), "  " + word.Text.Replace(" ", " \u00a0 ", StringComparison.Ordinal) + ". "];
        foreach (var form in forms) Assert.Equal(new ReadingParse.Word(word), ReadingText.Parse(form, everything));
    }

    [Theory]
    [InlineData("beep", "beeps", "beeps no-beep")]
    [InlineData("nothing", "no-beep", "beeps no-beep")]
    [InlineData("silence", "no-beep", "beeps no-beep")]
    [InlineData("no", "no-beep", "beeps no-beep")]
    [InlineData("OL", "no-beep", "beeps no-beep")]
    [InlineData("click", "clicks", "clicks silent")]
    [InlineData("no click", "silent", "clicks silent")]
    [InlineData("Nothing!", "silent", "clicks silent")]
    [InlineData("silence", "silent", "clicks silent")]
    [InlineData("yes", "clicks", "clicks silent")]
    [InlineData("doesn’t click", "silent", "clicks silent")]
    [InlineData("dont know", "not-sure", "clicks silent")]
    [InlineData("?", "not-sure", "clicks silent")]
    [InlineData("nothing", "dark", "bright dim dark")]
    [InlineData("off", "dark", "bright dim dark")]
    [InlineData("runs slow", "runs-slowly", "runs runs-slowly hums silent")]
    [InlineData("works", "runs", "runs runs-slowly hums silent")]
    [InlineData("dead", "silent", "runs runs-slowly hums silent")]
    [InlineData("cold", "cool", "hot warm cool")]
    [InlineData("looks good", "whole", "blown whole")]
    [InlineData("not blown", "whole", "blown whole")]
    [InlineData("open", "blown", "blown whole")]
    [InlineData("works", "works", "works weak dead")]
    [InlineData("dead", "dead", "works weak dead")]
    [InlineData("fixed", "cured", "cured not-cured")]
    [InlineData("same", "not-cured", "cured not-cured")]
    [InlineData("works", "cured", "cured not-cured")]
    [InlineData("code", "code-stored", "code-stored no-code")]
    [InlineData("commanded on", "commanded", "commanded not-commanded")]
    [InlineData("commanded off", "not-commanded", "commanded not-commanded")]
    [InlineData("melted", "burnt", "tight loose corroded burnt")]
    [InlineData("flickers", "jumps", "jumps steady")]
    [InlineData("good", "passes", "passes fails")]
    public void Synonyms_are_taken_as_the_check_needs_them(string text, string id, string taken)
    {
        var expected = ExpectedAnswer.WordOnly(taken.Split(' ').Select(word => AnswerWord.Find(word)!));
        Assert.Equal(new ReadingParse.Word(AnswerWord.Find(id)!), ReadingText.Parse(text, expected));
    }

    [Fact]
    public void A_word_of_two_meanings_at_one_check_is_asked_about()
    {
        var expected = ExpectedAnswer.WordOnly(AnswerWord.Jumps, AnswerWord.Works, AnswerWord.Dead);
        var question = Assert.IsType<ReadingParse.Question>(ReadingText.Parse("yes", expected));
        Assert.Equal("reading.word-in-doubt", question.Message.Code);
        Assert.Equal(new ReadingParse.Word(AnswerWord.Jumps), question.Meant);
        Assert.Equal([new ReadingParse.Word(AnswerWord.Works)], question.Alternatives);
    }

    [Fact]
    public void The_words_own_name_wins_over_a_synonym()
    {
        var expected = ExpectedAnswer.WordOnly(AnswerWord.Dim, AnswerWord.Weak, AnswerWord.Silent, AnswerWord.Dead);
        Assert.Equal(new ReadingParse.Word(AnswerWord.Weak), ReadingText.Parse("weak", expected));
        Assert.Equal(new ReadingParse.Word(AnswerWord.Dead), ReadingText.Parse("dead", expected));
    }

    [Fact]
    public void A_continuity_check_takes_words_numbers_and_over_limit()
    {
        var expected = ExpectedAnswer.Ohms(AnswerWord.Beeps, AnswerWord.NoBeep);
        Assert.Equal(new ReadingParse.Word(AnswerWord.Beeps), ReadingText.Parse("it beeps", expected));
        Assert.Equal(new ReadingParse.Number(0.3, Quantity.Ohms, 0.1), ReadingText.Parse("0.3", expected));
        Assert.Equal(new ReadingParse.OverLimit(), ReadingText.Parse("OL", expected));
    }

    [Theory]
    [InlineData("12.4", "reading.word-wanted")]
    [InlineData("bright", "reading.word-does-not-fit")]
    [InlineData("purple", "reading.not-understood")]
    public void What_does_not_answer_is_refused_with_the_words_that_do(string text, string code)
    {
        var parse = ReadingText.Parse(text, ExpectedAnswer.WordOnly(AnswerWord.Blown, AnswerWord.Whole));
        var rejected = Assert.IsType<ReadingParse.Rejected>(parse);
        Assert.Equal(code, rejected.Message.Code);
        Assert.Contains("blown, whole, not sure", rejected.Message.Arguments);
    }

    [Fact]
    public void A_second_language_is_a_second_table()
    {
        var german = AnswerWords.From(key => key switch
        {
            "beeps" => "piept; ja",
            "no-beep" => "piept nicht; nichts; nein",
            "over-limit" => "OL; unendlich",
            _ => null,
        });
        var expected = ExpectedAnswer.Ohms(AnswerWord.Beeps, AnswerWord.NoBeep);
        Assert.Equal(new ReadingParse.Word(AnswerWord.NoBeep), ReadingText.Parse("Piept nicht", expected, german));
        Assert.Equal(new ReadingParse.OverLimit(), ReadingText.Parse("unendlich", expected, german));
        Assert.Equal(new ReadingParse.Word(AnswerWord.NoBeep), ReadingText.Parse("no-beep", expected, german));
        Assert.Equal("piept nicht", german.TextOf(AnswerWord.NoBeep));
        Assert.IsType<ReadingParse.Rejected>(ReadingText.Parse("silence", expected, german));
    }
}
