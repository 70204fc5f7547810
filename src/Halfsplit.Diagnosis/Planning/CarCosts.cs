using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>
/// What the change from one arrangement to another costs on this car. Positions are numbered as they come up; what was
/// computed once is kept for the length of a plan. A position is a stance (arrangement, what was reached, meter, leads), of which there are
/// few, with the places open, so that each is reckoned apart. Putting back counts where it is caused: who opens a place
/// has to close it.
/// </summary>
internal sealed class CarCosts : IChangeCosts
{
    private readonly Circuit _circuit;
    private readonly DiagnosisOptions _options;
    private readonly int _checkCount;
    private readonly IReadOnlyList<RepairChoice> _repairs;
    private readonly Check[][] _steps;
    private readonly double[] _work;
    private readonly double[] _risk;
    private readonly ImmutableSortedSet<string>[] _access;
    private readonly ImmutableSortedSet<string> _everyPlace;

    private readonly List<Position> _stances = [];
    private readonly Dictionary<(string, string, Instrument?, TerminalName?), int> _stanceNumbers = [];
    private readonly List<Change[]> _rearranging = [];

    private readonly List<ImmutableSortedSet<string>> _openings = [];
    private readonly Dictionary<string, int> _openingNumbers = new(StringComparer.Ordinal);
    private readonly List<Change[]> _opening = [];

    private readonly List<(int Stance, int Opening)> _positions = [];
    private readonly Dictionary<(int, int), int> _numbers = [];
    private readonly List<double> _putBack = [];
    private readonly List<Change[]> _changes = [];

    public CarCosts(
        Circuit circuit, DiagnosisOptions options, Position start, IReadOnlyList<Check> checks, IReadOnlyList<RepairChoice> repairs)
    {
        _circuit = circuit;
        _options = options;
        _checkCount = checks.Count;
        _repairs = repairs;
        _steps = [.. checks.Select(c => new[] { c }), .. repairs.Select(r => r.Steps.Select(s => s.Check).ToArray())];
        _work = [.. checks.Select(_ => 0.0), .. repairs.Select(r => r.Steps.Sum(s => s.Repair.Minutes) + Economy.ProofMinutes)];
        _risk = [.. _steps.Select(steps => steps.Sum(step => Risk.MinutesOf(circuit, step)))];
        _access = [.. _steps.Select(steps => steps.Aggregate(
            ImmutableSortedSet.Create<string>(StringComparer.Ordinal), (all, step) => all.Union(Access.PlacesOf(circuit, step))))];
        _everyPlace = circuit.Places.Select(p => p.Name).ToImmutableSortedSet(StringComparer.Ordinal);
        Start = Number(Stance(start), Opening(start.Arrangement.Opened));
    }

    public int Start { get; }

    /// <summary>Minutes and risks alone: the price of the right part is paid whichever way it is found, and a wrong one's counts as wrong.</summary>
    public double Cost(int position, int action) => _options.EconomyInUse.Worth(Minutes(position, action) + _risk[action]);

    public double Minutes(int position, int action) => Move(position, action).Minutes;

    public double Price(int action) => action < _checkCount ? 0 : _repairs[action - _checkCount].Price;

    public int After(int position, int action) => Move(position, action).After;

    private Change Move(int position, int action)
    {
        if (_changes[position][action] is { IsKnown: true } known)
        {
            return known;
        }

        var (stance, opening) = _positions[position];
        var rearranged = Rearrange(stance, action);
        var opened = Open(opening, action);
        var after = Number(rearranged.After, opened.After);
        return _changes[position][action] = new Change(
            Math.Max(0.05, rearranged.Minutes + opened.Minutes + _work[action] + _putBack[after] - _putBack[position]), after);
    }

    private Change Rearrange(int stance, int action)
    {
        if (_rearranging[stance][action] is { IsKnown: true } known)
        {
            return known;
        }

        var from = _stances[stance];
        var minutes = 0.0;
        foreach (var step in _steps[action])
        {
            minutes += Effort.MinutesOf(_circuit, _options, from, step);
            from = from.After(_circuit, step);
        }

        return _rearranging[stance][action] = new Change(minutes, Stance(from));
    }

    private Change Open(int opening, int action)
    {
        if (_opening[opening][action] is { IsKnown: true } known)
        {
            return known;
        }

        var minutes = 0.0;
        foreach (var name in _access[action].Except(_openings[opening]))
        {
            minutes += _circuit.FindPlace(name)!.OpenMinutes;
        }

        return _opening[opening][action] = new Change(minutes, Opening(_openings[opening].Union(_access[action])));
    }

    /// <summary>The number of a stance; kept with every place open, so that its minutes are those of the rest.</summary>
    private int Stance(Position position)
    {
        ref var number = ref CollectionsMarshal.GetValueRefOrAddDefault(
            _stanceNumbers, (position.Arrangement.Key, string.Join('\n', position.Reached), position.Instrument, position.Black), out var isKnown);
        if (!isKnown)
        {
            number = _stances.Count;
            _stances.Add(position with { Arrangement = position.Arrangement with { Opened = _everyPlace } });
            _rearranging.Add(new Change[_steps.Length]);
        }

        return number;
    }

    private int Opening(ImmutableSortedSet<string> places)
    {
        ref var number = ref CollectionsMarshal.GetValueRefOrAddDefault(_openingNumbers, string.Join('\n', places), out var isKnown);
        if (!isKnown)
        {
            number = _openings.Count;
            _openings.Add(places);
            _opening.Add(new Change[_steps.Length]);
        }

        return number;
    }

    private int Number(int stance, int opening)
    {
        ref var number = ref CollectionsMarshal.GetValueRefOrAddDefault(_numbers, (stance, opening), out var isKnown);
        if (!isKnown)
        {
            number = _positions.Count;
            _positions.Add((stance, opening));
            var position = _stances[stance];
            _putBack.Add(PutBack.MinutesOf(_circuit, position with { Arrangement = position.Arrangement with { Opened = _openings[opening] } }));
            _changes.Add(new Change[_steps.Length]);
        }

        return number;
    }

    private readonly record struct Change(double Minutes, int After)
    {
        private readonly bool _isKnown = true;

        public bool IsKnown => _isKnown;
    }
}

/// <summary>Repairs that together mend one class of suspects, with the checks that stand for carrying them out.</summary>
internal sealed record RepairChoice(IReadOnlyList<(Repair Repair, Check Check)> Steps)
{
    public double Price { get; } = Steps.Sum(s => s.Repair.Price.Middle);

    public string Id { get; } = string.Join(" + ", Steps.Select(s => s.Repair.Id));
}
