using Halfsplit.App.Views;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.App.Showing;

/// <summary>Cautions with a word for the strip.</summary>
internal static class CautionViews
{
    public static CautionView[] Of(IEnumerable<Message> cautions) => [.. cautions.Select(Of)];

    public static CautionView Of(Message caution)
    {
        var name = caution.Code[(caution.Code.IndexOf('.', StringComparison.Ordinal) + 1)..];
        var code = $"app.short-caution.{name}";
        var text = AppTexts.Catalog.Say(caution);
        return new CautionView(
            caution.ToString(), AppTexts.Say(AppTexts.Catalog.Has(code) ? code : "app.short-caution.any"), text);
    }
}
