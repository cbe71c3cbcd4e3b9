namespace HotShop.Checks;

/// <summary>How a published value came to us.</summary>
public enum Standing
{
    /// <summary>Read in a text that states it, or in a copy of one.</summary>
    Read,

    /// <summary>Computed apart from this library, by other code, from inputs that were read.</summary>
    Computed,

    /// <summary>From memory; no text was found that confirms it.</summary>
    Memory,
}
