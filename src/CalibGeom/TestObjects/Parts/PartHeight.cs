namespace CalibGeom.TestObjects.Parts;

/// <summary>How high a part stands out, as far as its neighbours care.</summary>
public enum PartHeight
{
    /// <summary>High enough to stand in the way of jaws and of light.</summary>
    Tall,

    /// <summary>
    /// So low, as labels are, that it may stand close to tall parts and in a sight lane, but not near a caliper lane.
    /// </summary>
    Low,

    /// <summary>Level with the plinth: a place where nothing stands; lanes may cross it.</summary>
    Flat,
}
