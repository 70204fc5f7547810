using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Settings;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Cars;

/// <summary>What the options say the person comes with.</summary>
public static class Complaints
{
    /// <summary>Null, with a problem in <paramref name="names"/>, where it can't be understood.</summary>
    public static Complaint? Of(Circuit circuit, AtHandSettings settings, Names names)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(names);
        if (settings.Load is not null || settings.In is not null || settings.Is is not null)
        {
            return Spelled(circuit, settings, names);
        }

        if (settings.Complaint is not { } text)
        {
            if (ComplaintChoice.Usual(circuit) is { } usual)
            {
                return usual;
            }

            names.Add(new Message("cli.no-complaint-at-all"));
            return null;
        }

        if (ComplaintChoice.Named(circuit, text) is { } known)
        {
            return known;
        }

        var all = circuit.Complaints.Select(c => c.Name).ToList();
        names.Add(new Message("cli.no-complaint", text, Spelling.Hint(text, all), string.Join("; ", all)));
        return null;
    }

    /// <summary>With --load and its kin, the text is the person's own words.</summary>
    private static Complaint? Spelled(Circuit circuit, AtHandSettings settings, Names names)
    {
        if (settings.Load is null || settings.In is null)
        {
            names.Add(new Message("cli.complaint-needs"));
            return null;
        }

        var load = names.Load(settings.Load);
        var condition = names.Condition(settings.In);
        LoadCondition? state = (settings.Is ?? ComplaintChoice.Dead).ToUpperInvariant() switch
        {
            "DEAD" => LoadCondition.Dead,
            "WEAK" => LoadCondition.Weak,
            _ => null,
        };
        if (state is null)
        {
            names.Add(new Message("cli.bad-is", settings.Is!));
        }

        if (load is null || condition is null || state is not { } fares)
        {
            return null;
        }

        var name = settings.Complaint
            ?? circuit.Complaints.FirstOrDefault(c => c.Load == load && c.Is == fares && c.Condition == condition)?.Name
            ?? $"{load} {(fares == LoadCondition.Weak ? ComplaintChoice.Weak : ComplaintChoice.Dead)}";
        return new Complaint(name, load, fares, condition);
    }
}
