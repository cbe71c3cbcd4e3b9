using HotShop.Monitor.Money;

namespace HotShop.Monitor.Web.Pages.Bills;

/// <summary>A bill as the form posts it; kept as typed, so that a slip is mended and not typed anew.</summary>
public sealed record BillDraft
{
    public string? Id { get; init; }
    public string? Energy { get; init; }
    public string? First { get; init; }
    public string? Last { get; init; }
    public string? Quantity { get; init; }
    public string? Unit { get; init; }
    public string? EnergyKwh { get; init; }
    public string? Amount { get; init; }
    public string? Note { get; init; }

    /// <summary>Id of the bill that this strikes out.</summary>
    public string? Corrects { get; init; }

    public BillRow Row(string decimalMark, string? who) => new(
        Id, Energy, First, Last, TypedNumber.Plain(Quantity, decimalMark), Unit, TypedNumber.Plain(EnergyKwh, decimalMark), TypedNumber.Plain(Amount, decimalMark), Note, who, Corrects);
}
