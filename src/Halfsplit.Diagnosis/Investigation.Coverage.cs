using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Coverage;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Explaining;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>
    /// Which suspects of the complaint the checks at hand can tell apart, whatever has been read so far. Places given up count.
    /// </summary>
    public CoverageReport Coverage()
    {
        var now = Assess();
        var atHand = CheckCatalog.Generate(Network, Complaint, Options, now.GivenUp);
        var known = atHand.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        var others = _allChecks.Values
            .Where(c => !known.Contains(c.Id))
            .Select(c => (c, Lacking.Of(Circuit, Options, now.GivenUp, [], c)));
        return new CoverageStudy(_forecaster, Options, Posterior.Of(_singles, _forecaster, []), ClassOf)
            .Run(atHand, others, CheckCatalog.Reproduce(Circuit, Complaint));
    }
}
