namespace HotShop.Mutation;

/// <summary>What became of one altered number.</summary>
/// <param name="Stage"><c>checks</c>, <c>unit tests</c>, <c>survived</c> or <c>uncompilable</c>.</param>
/// <param name="By">The first check or test that turned red.</param>
sealed record Finding(string Id, string File, int Line, string Was, string Now, string Stage, string By)
{
    public const string Checks = "checks", Tests = "unit tests", Survived = "survived", Uncompilable = "uncompilable";

    public static Finding Of(Mutant mutant, bool asInteger, string stage, string by) =>
        new(mutant.Id, mutant.File, mutant.Line, mutant.Was, asInteger ? mutant.NextInteger! : mutant.Now, stage, by);
}
