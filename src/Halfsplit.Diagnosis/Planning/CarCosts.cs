using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Repairs;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>
/// What the change from one arrangement to another costs on this car. Positions are numbered as they come up; what was
/// computed once is kept for the length of a plan. Putting back counts where it is caused: who opens a place has to
/// close it.
/// </summary>
internal sealed class CarCosts : IChangeCosts
{
    private readonly Circuit _circuit;
    private readonly DiagnosisOptions _options;
    private readonly IReadOnlyList<Check> _checks;
    private readonly IReadOnlyList<RepairChoice> _repairs;
    private readonly List<Position> _positions = [];
    private readonly List<double> _putBack = [];
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly List<Change?[]> _changes = [];

    public CarCosts(
        Circuit circuit, DiagnosisOptions options, Position start, IReadOnlyList<Check> checks, IReadOnlyList<RepairChoice> repairs)
    {
        _circuit = circuit;
        _options = options;
        _checks = checks;
        _repairs = repairs;
        Start = Number(start);
    }

    public int Start { get; }

    /// <summary>Minutes alone: the price of the right part is paid whichever way it is found, and a wrong one's counts as wrong.</summary>
    public double Cost(int position, int action) => _options.EconomyInUse.Worth(Minutes(position, action));

    public double Minutes(int position, int action)
    {
        var (minutes, after) = Move(position, action);
        return Math.Max(0.05, minutes + _putBack[after] - _putBack[position]);
    }

    public double Price(int action) => action < _checks.Count ? 0 : _repairs[action - _checks.Count].Price;

    public int After(int position, int action) => Move(position, action).After;

    private Change Move(int position, int action)
    {
        if (_changes[position][action] is { } known)
        {
            return known;
        }

        var from = _positions[position];
        var minutes = 0.0;
        if (action < _checks.Count)
        {
            minutes = Effort.MinutesOf(_circuit, _options, from, _checks[action]);
            from = from.After(_circuit, _checks[action]);
        }
        else
        {
            foreach (var (repair, check) in _repairs[action - _checks.Count].Steps)
            {
                minutes += Effort.MinutesOf(_circuit, _options, from, check) + repair.Minutes;
                from = from.After(_circuit, check);
            }

            minutes += Economy.ProofMinutes;
        }

        var change = new Change(minutes, Number(from));
        _changes[position][action] = change;
        return change;
    }

    private int Number(Position position)
    {
        var key = $"{position.Arrangement.Key}|{string.Join(',', position.Arrangement.Opened)}|{position.Instrument}|{position.Black}";
        if (!_numbers.TryGetValue(key, out var number))
        {
            _numbers[key] = number = _positions.Count;
            _positions.Add(position);
            _putBack.Add(PutBack.MinutesOf(_circuit, position));
            _changes.Add(new Change?[_checks.Count + _repairs.Count]);
        }

        return number;
    }

    private readonly record struct Change(double Minutes, int After);
}

/// <summary>Repairs that together mend one class of suspects, with the checks that stand for carrying them out.</summary>
internal sealed record RepairChoice(IReadOnlyList<(Repair Repair, Check Check)> Steps)
{
    public double Price => Steps.Sum(s => s.Repair.Price.Middle);

    public string Id => string.Join(" + ", Steps.Select(s => s.Repair.Id));
}
