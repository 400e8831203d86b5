namespace CalibGeom.Verification.Tests.Words;

/// <summary>What happened at the bench, in a few words, and what is said of it.</summary>
internal sealed record Story(string Name, IReadOnlyList<Finding> Findings);
