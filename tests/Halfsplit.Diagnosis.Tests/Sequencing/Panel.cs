namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>A repair behind a panel.</summary>
internal sealed record Step(double Odds, double Cost, int Repair);

/// <summary>A panel with the repairs and the further panels behind it.</summary>
internal sealed record Panel(double Open, Step[] Steps, Panel[] Panels)
{
    /// <summary>All repairs behind this panel, it being open, in the order of probability per cost, bottom up.</summary>
    public List<int> Order()
    {
        var (steps, panels, order) = (Steps.ToList(), Panels.ToList(), new List<int>());
        while (Take(steps, panels, 0) is { } block)
            order.AddRange(block.Repairs);
        return order;
    }

    /// <summary>Opening it and doing as much behind it as raises the probability per cost of the whole.</summary>
    private Block Closed()
    {
        var (odds, cost, repairs) = (0.0, Open, new List<int>());
        var (steps, panels) = (Steps.ToList(), Panels.ToList());
        while (Take(steps, panels, odds / cost) is { } block)
        {
            (odds, cost) = (odds + block.Odds, cost + block.Cost);
            repairs.AddRange(block.Repairs);
        }

        return new Block(odds, cost, repairs, steps, panels);
    }

    /// <summary>Takes the best of what is open if it is better than a ratio; what lies open after it joins the rest.</summary>
    private static Block? Take(List<Step> steps, List<Panel> panels, double atLeast)
    {
        var step = steps.MaxBy(s => s.Odds / s.Cost);
        var panel = panels.MaxBy(p => p.Closed().Ratio);
        var (ofStep, ofPanel) = (step is null ? 0 : step.Odds / step.Cost, panel is null ? 0 : panel.Closed().Ratio);
        if (Math.Max(ofStep, ofPanel) <= atLeast)
            return null;
        if (ofStep >= ofPanel)
        {
            steps.Remove(step!);
            return new Block(step!.Odds, step.Cost, [step.Repair], [], []);
        }

        var block = panel!.Closed();
        panels.Remove(panel);
        steps.AddRange(block.Steps);
        panels.AddRange(block.Panels);
        return block;
    }

    /// <summary>Repairs done together, and what is open and not done after them.</summary>
    private sealed record Block(double Odds, double Cost, List<int> Repairs, List<Step> Steps, List<Panel> Panels)
    {
        public double Ratio => Odds / Cost;
    }
}
