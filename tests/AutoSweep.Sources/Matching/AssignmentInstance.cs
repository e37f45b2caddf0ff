using System.Text.Json;
using AutoSweep.Core.Matching;

namespace AutoSweep.Sources.Matching;

/// <summary>A generalized assignment problem of OR-Library (J. E. Beasley), as in tests/Reference/or_library_gap.json.</summary>
/// <param name="File">The set.</param>
/// <param name="Problem">The number in it.</param>
/// <param name="KnownOptimum">The published best profit.</param>
/// <param name="Cost">Profit by agent and job.</param>
/// <param name="Resource">Need by agent and job.</param>
/// <param name="Capacity">What each agent has.</param>
public sealed record AssignmentInstance(string File, int Problem, long KnownOptimum, long[][] Cost, long[][] Resource, long[] Capacity)
{
    private static readonly JsonSerializerOptions Json = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    private sealed record InstanceFile(AssignmentInstance[] Instances);

    /// <summary>Reads the instances.</summary>
    public static IReadOnlyList<AssignmentInstance> Read(string json) => JsonSerializer.Deserialize<InstanceFile>(json, Json)!.Instances;

    /// <summary>The same as a packing: a job is a group, an agent a resource, profit a negative cost.</summary>
    public PackingProblem AsPacking() => new(Cost[0].Length, Capacity, [..
        from job in Enumerable.Range(0, Cost[0].Length)
        from agent in Enumerable.Range(0, Capacity.Length)
        select new PackingChoice(job, [new(agent, Resource[agent][job])], [-Cost[agent][job]])]);
}
