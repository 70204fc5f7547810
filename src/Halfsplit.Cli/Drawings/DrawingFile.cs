using System.Text;
using Halfsplit.Circuits.Messages;
using SkiaSharp;
using Svg.Skia;

namespace Halfsplit.Cli.Drawings;

/// <summary>Writes a drawing to a file, in the format that the file's name asks for.</summary>
public static class DrawingFile
{
    /// <summary>Pixels of a picture per pixel of the drawing.</summary>
    private const float Sharpness = 2;

    /// <summary>No picture has more pixels than this; a larger drawing is less sharp.</summary>
    private const double MostPixels = 60e6;

    /// <summary>Points per pixel: 72 of the one and 96 of the other are an inch.</summary>
    private const float PointsPerPixel = 0.75f;

    /// <summary>The endings that are understood.</summary>
    public static IReadOnlyList<string> Endings { get; } = [".svg", ".png", ".pdf"];

    /// <summary>True if the file is one for programs that know no CSS variables.</summary>
    public static bool IsPlain(string path) => EndingOf(path) != ".svg";

    public static string EndingOf(string path) => Path.GetExtension(path).ToLowerInvariant();

    /// <summary>Null when done, else what went wrong.</summary>
    public static Message? Write(string path, string svg)
    {
        try
        {
            using var stream = new MemoryStream();
            if (EndingOf(path) == ".svg")
            {
                stream.Write(Encoding.UTF8.GetBytes(svg));
            }
            else
            {
                Render(svg, stream, isPdf: EndingOf(path) == ".pdf");
            }

            File.WriteAllBytes(path, stream.ToArray());
            return null;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return new Message("cli.drawing-unwritable", path, trouble.Message);
        }
        catch (Exception trouble) when (trouble is DllNotFoundException or TypeInitializationException)
        {
            // The picture library needs the machine's own font library; the SVG needs nothing.
            return new Message("cli.no-pictures", path);
        }
    }

    private static void Render(string svg, Stream stream, bool isPdf)
    {
        using var drawing = new SKSvg();
        drawing.FromSvg(svg);
        var picture = drawing.Picture ?? throw new InvalidDataException("The drawing is empty.");
        var size = picture.CullRect;
        if (isPdf)
        {
            using var document = SKDocument.CreatePdf(stream);
            var canvas = document.BeginPage(size.Width * PointsPerPixel, size.Height * PointsPerPixel);
            canvas.Scale(PointsPerPixel);
            canvas.DrawPicture(picture);
            document.EndPage();
            document.Close();
            return;
        }

        var scale = (float)Math.Min(Sharpness, Math.Sqrt(MostPixels / ((double)size.Width * size.Height)));
        drawing.Save(stream, SKColors.White, SKEncodedImageFormat.Png, 100, scale, scale);
    }
}
