using HotShop.Monitor.Fuel;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Money;

/// <summary>Takes the interval of a span's energy apart into its reasons.</summary>
sealed class AccountDoubts(StudioFormat format)
{
    /// <returns>Largest first; empty for a span that is not made of months, whose energy is added up by days.</returns>
    public IReadOnlyList<AccountDoubt> Of(Spending spending)
    {
        if (spending.Months.Count == 0) return [];
        var budgets = new[]
        {
            (Kind: EnergyKind.Gas, Budget: Budget.Sum([.. spending.Months.Select(m => m.GasBudget)])),
            (Kind: EnergyKind.Electricity, Budget: Budget.Sum([.. spending.Months.Select(m => m.ElectricityBudget)])),
        };
        // Gas and electricity have nothing in common.
        var whole = budgets.Sum(b => b.Budget.StandardUncertainty * b.Budget.StandardUncertainty);
        return [.. budgets.SelectMany(b => b.Budget.Contributions.Where(c => c.Effect != 0).Select(c => Doubt(b.Kind, c, whole))).OrderByDescending(d => d.Share.Value)];
    }

    AccountDoubt Doubt(EnergyKind kind, Contribution contribution, double whole)
    {
        var half = new Budget(0, contribution).HalfWidth95;
        return new(kind, contribution.Name, new Figure(half, $"±{format.Energy(half)}"), format.PercentFigure(contribution.Effect * contribution.Effect / whole));
    }
}
