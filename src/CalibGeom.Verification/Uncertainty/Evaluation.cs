namespace CalibGeom.Verification.Uncertainty;

/// <summary>How an uncertainty was evaluated (JCGM 100, 4.2 and 4.3).</summary>
public enum Evaluation
{
    /// <summary>From the statistics of repeated observations.</summary>
    A,

    /// <summary>From other knowledge: a certificate, a specification, a display's step.</summary>
    B,
}
