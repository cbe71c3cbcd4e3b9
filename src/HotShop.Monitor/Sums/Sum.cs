namespace HotShop.Monitor.Sums;

/// <summary>An everyday sum of the shop: what it asks, how it is worked, and how far to trust it. It changes nothing and keeps nothing.</summary>
abstract class Sum
{
    /// <summary>In the address.</summary>
    public abstract string Id { get; }

    public abstract string Title { get; }

    /// <summary>Heading it stands under.</summary>
    public abstract string Group { get; }

    public abstract IReadOnlyList<SumField> Fields { get; }

    /// <summary>How it is worked, in one line.</summary>
    public abstract string Method { get; }

    /// <summary>Where the method and its numbers come from.</summary>
    public abstract string Source { get; }

    /// <summary>Where it holds, and what its interval does not know.</summary>
    public abstract string Range { get; }

    /// <summary>Said with every result, as a sum may lead to an act; a sum of its own danger says that one.</summary>
    public virtual string Caution => General;

    public const string General = "These sums are for planning. They watch nothing and measure nothing; before you change a fire, a pot or a wall because of one, ask whoever is licensed for it and follow the local code.";

    /// <param name="input">Every field within its limits.</param>
    public abstract SumAnswer Work(SumInput input, SumAsker asker);
}

/// <summary>Who asks.</summary>
/// <param name="IsOwner">Money is the owner's.</param>
/// <param name="At">Now.</param>
public readonly record struct SumAsker(bool IsOwner, NodaTime.Instant At);

/// <summary>Headings of the list.</summary>
static class SumGroups
{
    public const string Heat = "Heat and fire", Fuel = "Gas and money", Glass = "Glass", Pot = "Pot";
}
