using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Halfsplit.Simulation.Tests.Judges;

/// <summary>A netlist, and the nodes whose volts are wanted.</summary>
/// <param name="Netlist">A whole SPICE deck: title line, elements, with or without <c>.end</c>; no analysis of its own.</param>
/// <param name="Nodes">Node names as in the netlist; case doesn't matter; <c>0</c> is zero volts.</param>
public sealed record SpiceQuestion(string Netlist, IReadOnlyList<string> Nodes);

/// <summary>
/// The outside judge: runs <c>ngspice</c> once for many netlists and gives the operating points it finds. A machine
/// without it fails the test, since a judge who isn't there must not pass anything.
/// </summary>
public static class NgSpice
{
    private const string Marker = "#question ";

    private const int MostByName = 60;

    /// <summary>Finds the operating point of each netlist, in one process.</summary>
    /// <returns>Per question, the volts of its nodes in the order asked.</returns>
    public static IReadOnlyList<double[]> Volts(IReadOnlyList<SpiceQuestion> questions)
    {
        var folder = Directory.CreateTempSubdirectory("halfsplit-spice-");
        try
        {
            var script = new StringBuilder("* questions\n.control\nset numdgt=15\nset width=200\n");
            for (var index = 0; index < questions.Count; index++)
            {
                File.WriteAllText(Path.Combine(folder.FullName, Name(index)), Complete(questions[index].Netlist));
                script.Append(CultureInfo.InvariantCulture, $"echo {Marker}{index}\nsource {Name(index)}\nop\n");
                // One by one takes the square of the number of nodes; "all" hides the name of a lonely one.
                if (questions[index].Nodes.Count > MostByName)
                    script.Append("print all\n");
                else
                {
                    foreach (var node in questions[index].Nodes.Where(node => node != "0"))
                        script.Append(CultureInfo.InvariantCulture, $"print v({node})\n");
                }

                script.Append("destroy all\nremcirc\n");
            }

            script.Append("quit\n.endc\n.end\n");
            File.WriteAllText(Path.Combine(folder.FullName, "questions.cir"), script.ToString());
            return Read(Run(folder.FullName, "questions.cir"), questions);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Name(int index) => string.Create(CultureInfo.InvariantCulture, $"q{index}.cir");

    private static string Complete(string netlist)
    {
        var lines = netlist.TrimEnd();
        return lines.EndsWith(".end", StringComparison.OrdinalIgnoreCase) ? lines + "\n" : lines + "\n.end\n";
    }

    private static string Run(string folder, string script)
    {
        var start = new ProcessStartInfo("ngspice", ["-b", script])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        Process process;
        try
        {
            process = Process.Start(start)!;
        }
        catch (System.ComponentModel.Win32Exception missing)
        {
            throw new InvalidOperationException(
                "ngspice can't be started, and without this judge the test can't pass. On Debian: apt-get install ngspice", missing);
        }

        using (process)
        {
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0
                ? output
                : throw new InvalidOperationException($"ngspice ended with code {process.ExitCode}:\n{output}\n{errors.Result}");
        }
    }

    private static double[][] Read(string output, IReadOnlyList<SpiceQuestion> questions)
    {
        var found = new Dictionary<string, double>[questions.Count];
        Dictionary<string, double>? current = null;
        foreach (var line in output.Split('\n'))
        {
            if (line.StartsWith(Marker, StringComparison.Ordinal))
                current = found[int.Parse(line.AsSpan(Marker.Length), CultureInfo.InvariantCulture)] = new(StringComparer.OrdinalIgnoreCase);
            else if (line.IndexOf(" = ", StringComparison.Ordinal) is > 0 and var end && !line.AsSpan(0, end).Contains(' ')
                && double.TryParse(line.AsSpan(end + 3), NumberStyles.Float, CultureInfo.InvariantCulture, out var volts))
                current![line.StartsWith("v(", StringComparison.OrdinalIgnoreCase) ? line[2..(end - 1)] : line[..end]] = volts;
        }

        return [.. questions.Select((question, index) => question.Nodes.Select(node => Value(found[index], node, output)).ToArray())];
    }

    private static double Value(Dictionary<string, double>? found, string node, string output)
    {
        if (node == "0")
            return 0;
        return found is not null && found.TryGetValue(node, out var volts)
            ? volts
            : throw new InvalidOperationException($"ngspice gave no volts for node {node}. It said:\n{output}");
    }
}
