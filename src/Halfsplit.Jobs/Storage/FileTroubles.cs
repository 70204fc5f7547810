using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Storage;

/// <summary>Says what a failed file operation means to a person.</summary>
internal static class FileTroubles
{
    /// <summary>Whether this is a failure of the file system and not of the program.</summary>
    public static bool IsExpected(Exception trouble) =>
        trouble is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    /// <summary>Whether another handle holds the file.</summary>
    public static bool IsInUse(Exception trouble)
    {
        if (trouble is not IOException || trouble.GetType() != typeof(IOException)) return false;
        var code = trouble.HResult & 0xFFFF;
        // Sharing and lock violations; EAGAIN on Linux and on the BSDs.
        return OperatingSystem.IsWindows() ? code is 32 or 33 : code is 11 or 35;
    }

    public static Message Describe(Exception trouble, string path) => trouble switch
    {
        FileNotFoundException => new Message("job.file-not-found", path),
        DirectoryNotFoundException => new Message("job.folder-not-found", path),
        UnauthorizedAccessException => new Message("job.file-no-permission", path),
        _ when IsInUse(trouble) => new Message("job.file-in-use", path),
        _ => new Message("job.file-trouble", path, trouble.Message),
    };
}
