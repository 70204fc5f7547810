using System.ComponentModel;
using System.Diagnostics;
using System.Text;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Cli.Printing;

/// <summary>Prints a page as PDF with the browser of this machine. The page goes there by a file of a folder of its own, and nowhere else.</summary>
public static class PdfPrinter
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    /// <summary>Prints; null where it went well, else what is wrong and how to mend it.</summary>
    public static Message? Print(string html, string path, Func<string, string?> environment)
    {
        if (InstalledBrowser.Find(environment) is not { } browser)
        {
            return new Message("report.no-browser", InstalledBrowser.Variable);
        }

        var folder = Directory.CreateTempSubdirectory("halfsplit-print-").FullName;
        try
        {
            var (page, pdf) = (Path.Combine(folder, "page.html"), Path.Combine(folder, "page.pdf"));
            File.WriteAllText(page, html, new UTF8Encoding(false));
            if (Run(browser, Arguments(folder, page, pdf)) is { } trouble)
            {
                return new Message("report.browser-failed", browser, trouble, InstalledBrowser.Variable);
            }

            if (!File.Exists(pdf))
            {
                return new Message("report.browser-failed", browser, "", InstalledBrowser.Variable);
            }

            // The name may have been taken while the browser printed.
            File.Move(pdf, path, overwrite: false);
            return null;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return new Message("job.file-trouble", path, trouble.Message);
        }
        finally
        {
            Remove(folder);
        }
    }

    private static List<string> Arguments(string folder, string page, string pdf)
    {
        List<string> arguments =
        [
            "--headless", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
            "--disable-extensions", "--user-data-dir=" + Path.Combine(folder, "profile"), "--no-pdf-header-footer", "--print-to-pdf=" + pdf,
            new Uri(page).AbsoluteUri,
        ];
        if (OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess)
        {
            // Chromium's sandbox refuses to start for root. The page is our own, and its policy lets no script run.
            arguments.Insert(0, "--no-sandbox");
        }

        return arguments;
    }

    /// <summary>Null where the browser ended well; else the last line it said.</summary>
    private static string? Run(string browser, List<string> arguments)
    {
        var start = new ProcessStartInfo(browser, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        try
        {
            using var process = Process.Start(start)!;
            var said = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEndAsync();
            if (!process.WaitForExit(Patience))
            {
                process.Kill(entireProcessTree: true);
                return Patience.ToString("%s' s'", System.Globalization.CultureInfo.InvariantCulture);
            }

            _ = output.GetAwaiter().GetResult();
            var lines = said.GetAwaiter().GetResult().Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            return process.ExitCode == 0 ? null : lines.LastOrDefault() ?? "";
        }
        catch (Win32Exception trouble)
        {
            return trouble.Message;
        }
    }

    private static void Remove(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            // A child of the browser may hold a file of its profile for a moment longer; the system's clean-up takes it.
        }
    }
}
