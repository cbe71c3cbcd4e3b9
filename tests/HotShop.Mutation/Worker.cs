using System.Text.Json;

namespace HotShop.Mutation;

/// <summary>What a worker is asked: which number, whether it counts as a whole number, and where to leave the images should the checks stay green.</summary>
sealed record Question(int Number, bool AsInteger, string Folder);

/// <summary>What it found.</summary>
/// <param name="Outcome"><c>red</c>, <c>green</c>, <c>uncompilable</c>, or <c>broken</c> where this program itself failed.</param>
sealed record Answer(string Outcome, string By, bool AsInteger);

/// <summary>The child process that alters and checks: an altered number may never come to an end, and only a process can be ended.</summary>
static class Worker
{
    public static int Run(AlteredLibrary altered, TextReader questions, TextWriter answers)
    {
        var numbers = altered.Numbers();
        var plainLibrary = altered.Library(null, "")!;
        var plainChecks = altered.Checks(plainLibrary) ?? throw new InvalidOperationException("the checks do not compile");
        var told = new Dictionary<string, string>();
        answers.WriteLine("ready");
        while (questions.ReadLine() is { } line)
        {
            var question = JsonSerializer.Deserialize<Question>(line)!;
            answers.WriteLine(JsonSerializer.Serialize(Tried(question)));
        }
        return 0;

        Answer Tried(Question question)
        {
            try
            {
                return Look(question);
            }
            catch (Exception failed) when (failed is IOException or InvalidOperationException or ArgumentException)
            {
                // A fault of this program must never pass for a number that was noticed.
                return new("broken", failed.Message, question.AsInteger);
            }
        }

        Answer Look(Question question)
        {
            var mutant = question.Number < 0 ? null : numbers[question.Number];
            var asInteger = question.AsInteger;
            while (true)
            {
                var image = altered.Library(mutant, asInteger ? mutant!.NextInteger! : mutant?.Now ?? "");
                if (image is null) return new("uncompilable", "", asInteger);
                var checks = mutant is { IsCopied: true } ? altered.Checks(image) : plainChecks;
                if (checks is null) return new("uncompilable", "", asInteger);
                var verdict = CheckRun.Of(image, checks, mutant is null ? null : told.GetValueOrDefault(mutant.File));
                if (verdict is { IsRed: true, Unreadable: true } && !asInteger && mutant?.NextInteger is not null)
                {
                    asInteger = true;
                    continue;
                }
                if (verdict.IsRed)
                {
                    if (mutant is not null) told[mutant.File] = verdict.By;
                    return new("red", verdict.By, asInteger);
                }
                Leave(question.Folder, mutant, image, checks);
                return new("green", "", asInteger);
            }
        }

        void Leave(string folder, Mutant? mutant, byte[] image, byte[] checks)
        {
            File.WriteAllBytes(Path.Combine(folder, "HotShop.Physics.dll"), image);
            if (mutant is not { IsCopied: true }) return;
            File.WriteAllBytes(Path.Combine(folder, "HotShop.Checks.dll"), checks);
            if (altered.Tests(image, checks) is { } tests) File.WriteAllBytes(Path.Combine(folder, "HotShop.Physics.Tests.dll"), tests);
        }
    }
}
