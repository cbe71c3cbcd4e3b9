namespace HotShop.Monitor.Configuration;

/// <summary>One thing wrong in the configuration, in one line: where, what, what to do.</summary>
public sealed record ConfigurationProblem(string Where, string What, string WhatToDo)
{
    public override string ToString() => $"{Where}: {What}; {WhatToDo}";
}

/// <summary>The configuration cannot be used. The command ends with exit status 2.</summary>
public sealed class ConfigurationException(IReadOnlyList<ConfigurationProblem> problems)
    : Exception(string.Join(Environment.NewLine, problems))
{
    public IReadOnlyList<ConfigurationProblem> Problems { get; } = problems;
}
