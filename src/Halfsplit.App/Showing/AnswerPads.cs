using Halfsplit.App.Views;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>What can be answered to a check.</summary>
internal static class AnswerPads
{
    public static AnswerPadView Nothing { get; } = new([], false, [], false);

    public static AnswerPadView Of(Investigation investigation, Check check)
    {
        var quantity = investigation.Expect(check).Quantity;
        var words = OfferedWords.Of(investigation.Circuit, check)
            .Concat(check.Subject == CheckSubject.Number ? [AnswerWord.Jumps] : (AnswerWord[])[])
            .Select(w => new WordView(w.Id, AppTexts.Words.TextOf(w)));
        return new AnswerPadView(
            Units(quantity), quantity == Quantity.Ohms, [.. words], check.Kind is not (CheckKind.Repair or CheckKind.PutBack));
    }

    private static string[] Units(Quantity? quantity) => quantity switch
    {
        Quantity.Volts => ["V", "mV"],
        Quantity.Ohms => ["Ω", "kΩ", "MΩ"],
        Quantity.Amperes => ["A", "mA"],
        Quantity.Duty => ["%"],
        _ => [],
    };
}
