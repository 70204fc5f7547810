using System.Text;

namespace Halfsplit.Circuits.Importing;

/// <summary>Turns a table's file into text, in whichever of the usual ways a spreadsheet wrote its letters.</summary>
internal static class TableBytes
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>UTF-16 where a byte order mark says so, else UTF-8 where the bytes are valid, else Windows-1252, in which any bytes are text.</summary>
    /// <returns>The text, and whether Windows-1252 was taken for want of anything better.</returns>
    public static (string Text, bool IsGuessed) Decode(byte[] bytes)
    {
        foreach (var marked in (Encoding[])[Encoding.Unicode, Encoding.BigEndianUnicode])
        {
            if (bytes.AsSpan().StartsWith(marked.Preamble))
            {
                return (marked.GetString(bytes.AsSpan(marked.Preamble.Length)), false);
            }
        }

        try
        {
            return (Strict.GetString(bytes), false);
        }
        catch (DecoderFallbackException)
        {
            return (CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetString(bytes), true);
        }
    }
}
