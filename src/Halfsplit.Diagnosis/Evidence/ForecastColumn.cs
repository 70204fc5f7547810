using Halfsplit.Diagnosis.Checks;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// The answers to one check of cars with one fault or none, as far as they are known, by the car's index; that of a car with
/// nothing wrong is below zero. Not thread-safe.
/// </summary>
internal sealed class ForecastColumn(Check check)
{
    /// <summary>Indices of cars with nothing wrong are above minus this.</summary>
    public const int FewestHealthy = 16;

    private Forecast?[] _known = [];

    public Check Check => check;

    /// <summary>Null where nothing is known yet.</summary>
    public Forecast? this[int car]
    {
        get => car + FewestHealthy < _known.Length ? _known[car + FewestHealthy] : null;
        set
        {
            if (car + FewestHealthy >= _known.Length)
            {
                Array.Resize(ref _known, Math.Max(2 * _known.Length, car + FewestHealthy + 1));
            }

            _known[car + FewestHealthy] = value;
        }
    }
}
