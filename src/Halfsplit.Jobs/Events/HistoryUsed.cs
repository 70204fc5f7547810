namespace Halfsplit.Jobs.Events;

/// <summary>
/// What finished jobs had taught when this one was opened. It stays with the job, so that the job means the same years
/// later and a replay reads no other file.
/// </summary>
/// <param name="Jobs">Finished jobs counted.</param>
/// <param name="CircuitJobs">Those among them on the same circuit.</param>
/// <param name="KindStrength">Expected faults that a kind's weight counts for.</param>
/// <param name="CircuitStrength">The same of a suspect in its circuit.</param>
public sealed record HistoryUsed(int Jobs, int CircuitJobs, double KindStrength, double CircuitStrength)
{
    /// <summary>By kind and mode: <c>motor/brushes-worn</c>.</summary>
    public ValueList<CountUsed> Kinds { get; init; }

    /// <summary>By suspect of the circuit: <c>M1 brushes worn</c>.</summary>
    public ValueList<CountUsed> Suspects { get; init; }
}

/// <summary>How often something was what was wrong, and how often it was expected.</summary>
public sealed record CountUsed(string Name, int Jobs, double Expected);
